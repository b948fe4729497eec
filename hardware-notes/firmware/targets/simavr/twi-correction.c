/*
 * simavr 1.6 never clears TWINT for polled masters, and reports SLA+W with the status of a data byte. Both are mended
 * after 1.6; the firmware stays as it is.
 */
#include <simavr/avr_twi.h>
#include "wires.h"

#define TWI_VECTOR 24
#define TWSR_ADDRESS 0xB9
#define MT_SLA_ACK 0x18
#define MT_SLA_NACK 0x20
#define MT_DATA_ACK 0x28
#define MT_DATA_NACK 0x30

bool wires_address_written; /* a START with a write address went out and its status is due */

static void on_status(avr_irq_t *irq, uint32_t value, void *param) {
  (void)irq;
  avr_t *avr = param;
  if (wires_address_written && (value == MT_DATA_ACK || value == MT_DATA_NACK))
    avr->data[TWSR_ADDRESS] =
        (uint8_t)((avr->data[TWSR_ADDRESS] & 7) | (value == MT_DATA_ACK ? MT_SLA_ACK : MT_SLA_NACK));
  if (value == MT_DATA_ACK || value == MT_DATA_NACK || value == MT_SLA_ACK || value == MT_SLA_NACK)
    wires_address_written = false;
}

void wires_correct_twi(avr_t *avr) {
  avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_TWI_GETIRQ(0), TWI_IRQ_STATUS), on_status, avr);
  for (int i = 0; i < avr->interrupts.vector_count; i++)
    if (avr->interrupts.vector[i]->vector == TWI_VECTOR) avr->interrupts.vector[i]->raise_sticky = 0;
}

#include "wires.h"
#include <simavr/avr_adc.h>
#include <simavr/avr_ioport.h>
#include <simavr/avr_twi.h>

#define SUPPLY_MILLIVOLTS 5000
#define LAMP_PIN 1
#define BUTTON_PIN 2
#define SENSE_MILLIVOLTS 200

extern bool wires_address_written;
static avr_t *board;
static avr_irq_t *to_master;
static bool addressed;

static uint64_t microseconds(void) { return board->cycle * 1000000u / board->frequency; }

/* The slave's side of the bus: acknowledge, take bytes, give bytes. */
static void on_bus(avr_irq_t *irq, uint32_t value, void *param) {
  (void)irq;
  struct virtual_sensor *sensor = &((struct scene *)param)->sensor;
  avr_twi_msg_irq_t message = {.u.v = value};
  uint8_t address = message.u.twi.addr;
  sensor->now_us = microseconds();
  if (message.u.twi.msg & TWI_COND_STOP) addressed = false;
  if (message.u.twi.msg & TWI_COND_START) {
    bool writing = !(address & 1);
    wires_address_written = writing;
    addressed = address >> 1 == VIRTUAL_ADDRESS && virtual_sensor_start(sensor, writing);
    if (addressed) avr_raise_irq(to_master, avr_twi_irq_msg(TWI_COND_ACK, address, 1));
  }
  if (!addressed) return;
  if (message.u.twi.msg & TWI_COND_WRITE) {
    avr_raise_irq(to_master, avr_twi_irq_msg(TWI_COND_ACK, address, 1));
    virtual_sensor_write(sensor, message.u.twi.data);
  }
  if (message.u.twi.msg & TWI_COND_READ)
    avr_raise_irq(to_master, avr_twi_irq_msg(TWI_COND_READ, address, virtual_sensor_read(sensor)));
}

static void on_lamp(avr_irq_t *irq, uint32_t value, void *param) {
  (void)irq;
  struct scene *scene = param;
  scene->sensor.lamp = value && !scene->lamp_broken;
  avr_raise_irq(avr_io_getirq(board, AVR_IOCTL_ADC_GETIRQ, ADC_IRQ_ADC1), scene->sensor.lamp ? SENSE_MILLIVOLTS : 0);
}

void wires_connect(avr_t *avr, struct scene *scene) {
  static const char *names[] = {"8>sensor.out", "32<sensor.in"};
  board = avr;
  avr_irq_t *sensor = avr_alloc_irq(&avr->irq_pool, 0, 2, names);
  to_master = sensor + TWI_IRQ_INPUT;
  avr_irq_register_notify(sensor + TWI_IRQ_OUTPUT, on_bus, scene);
  avr_connect_irq(to_master, avr_io_getirq(avr, AVR_IOCTL_TWI_GETIRQ(0), TWI_IRQ_INPUT));
  avr_connect_irq(avr_io_getirq(avr, AVR_IOCTL_TWI_GETIRQ(0), TWI_IRQ_OUTPUT), sensor + TWI_IRQ_OUTPUT);
  avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ('B'), LAMP_PIN), on_lamp, scene);
  avr->vcc = avr->avcc = avr->aref = SUPPLY_MILLIVOLTS;
}

#define PAINT 0xA5
static unsigned paint_begin;

void wires_paint_stack(avr_t *avr, unsigned data_end) {
  paint_begin = data_end;
  for (unsigned at = data_end; at <= avr->ramend; at++) avr->data[at] = PAINT;
}

unsigned wires_stack_left(const avr_t *avr) {
  unsigned at = paint_begin;
  while (at <= avr->ramend && avr->data[at] == PAINT) at++;
  return at - paint_begin;
}

void wires_after_reset(avr_t *avr) {
  avr_irq_t *button = avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ('D'), BUTTON_PIN);
  avr_raise_irq(button, 0);
  avr_raise_irq(button, 1);
}

void wires_update(avr_t *avr, struct scene *scene) {
  uint32_t millivolts = (uint32_t)(scene_thermistor_ratio(scene) + 0.5) * SUPPLY_MILLIVOLTS / 1024;
  bool down = microseconds() / 1000 < scene->button_until_ms;
  avr_raise_irq(avr_io_getirq(avr, AVR_IOCTL_ADC_GETIRQ, ADC_IRQ_ADC0), millivolts + 2);
  avr_raise_irq(avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ('D'), BUTTON_PIN), !down);
}

/* ATmega328P board: pins, converter, stored bytes, main loop. */
#include <avr/eeprom.h>
#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/wdt.h>
#include "board.h"
#include "hal.h"
#include "head.h"
#include "parts.h"

static void pins_begin(void) {
  LAMP_DDR |= _BV(LAMP_BIT);
  BUTTON_PORT |= _BV(BUTTON_BIT);
  ADCSRA = _BV(ADEN) | _BV(ADPS2) | _BV(ADPS1) | _BV(ADPS0); /* 125 kHz */
}

static uint16_t convert(uint8_t channel) {
  ADMUX = (uint8_t)(_BV(REFS0) | channel); /* the supply is the reference: the thermistor's divider is ratiometric */
  ADCSRA |= _BV(ADSC);
  while (ADCSRA & _BV(ADSC)) {
  }
  return ADC;
}

void hal_lamp(bool on) {
  if (on) LAMP_PORT |= _BV(LAMP_BIT);
  else LAMP_PORT &= (uint8_t)~_BV(LAMP_BIT);
}

bool hal_lamp_current_flows(void) { return convert(LAMP_SENSE_CHANNEL) >= LAMP_SENSE_LEAST; }
uint16_t hal_thermistor_ratio(void) { return convert(THERMISTOR_CHANNEL); }
bool hal_button_down(void) { return !(BUTTON_PIN & _BV(BUTTON_BIT)); }
uint8_t hal_store_read(uint8_t at) { return eeprom_read_byte((const uint8_t *)(uint16_t)at); }
void hal_store_write(uint8_t at, uint8_t byte) { eeprom_update_byte((uint8_t *)(uint16_t)at, byte); }

int main(void) {
  MCUSR = 0;
  wdt_disable(); /* a watchdog reset would leave it running */
  pins_begin();
  clock_begin();
  uart_begin();
  twi_begin();
  sei();
  head_power_on();
  for (;;) {
    uint8_t byte;
    if (uart_lost()) head_overrun();
    if (uart_take(&byte)) head_receive(byte);
    else head_poll();
  }
}

/* Two-wire bus, polled, with a limit on every wait so that a loose wire cannot hang the head. */
#include <avr/io.h>
#include <util/twi.h>
#include "board.h"
#include "hal.h"
#include "parts.h"

#define WAIT_LIMIT 4000u /* loops; more than 1 ms, a byte takes 25 us */

void twi_begin(void) {
  TWSR = 0;
  TWBR = (uint8_t)((F_CPU / BUS_HERTZ - 16) / 2);
  TWCR = _BV(TWEN);
}

static bool done(uint8_t wanted) {
  for (uint16_t i = 0; i < WAIT_LIMIT; i++)
    if (TWCR & _BV(TWINT)) return TW_STATUS == wanted;
  return false;
}

static bool start(uint8_t address, uint8_t direction, uint8_t wanted_start) {
  TWCR = _BV(TWINT) | _BV(TWSTA) | _BV(TWEN);
  if (!done(wanted_start)) return false;
  TWDR = (uint8_t)((address << 1) | direction);
  TWCR = _BV(TWINT) | _BV(TWEN);
  return done(direction == TW_READ ? TW_MR_SLA_ACK : TW_MT_SLA_ACK);
}

static bool write_byte(uint8_t byte) {
  TWDR = byte;
  TWCR = _BV(TWINT) | _BV(TWEN);
  return done(TW_MT_DATA_ACK);
}

static bool stop(bool result) {
  TWCR = _BV(TWINT) | _BV(TWSTO) | _BV(TWEN);
  for (uint16_t i = 0; i < WAIT_LIMIT && (TWCR & _BV(TWSTO)); i++) {
  }
  if (TWCR & _BV(TWSTO)) TWCR = 0; /* somebody holds the bus: let go, the next START begins anew */
  return result;
}

bool hal_bus_write(uint8_t address, uint8_t reg, const uint8_t *bytes, uint8_t count) {
  bool ok = start(address, TW_WRITE, TW_START) && write_byte(reg);
  for (uint8_t i = 0; ok && i < count; i++) ok = write_byte(bytes[i]);
  return stop(ok);
}

bool hal_bus_read(uint8_t address, uint8_t reg, uint8_t *bytes, uint8_t count) {
  bool ok = start(address, TW_WRITE, TW_START) && write_byte(reg) && start(address, TW_READ, TW_REP_START);
  for (uint8_t i = 0; ok && i < count; i++) {
    bool last = i + 1 == count;
    TWCR = (uint8_t)(_BV(TWINT) | _BV(TWEN) | (last ? 0 : _BV(TWEA)));
    ok = done(last ? TW_MR_DATA_NACK : TW_MR_DATA_ACK);
    bytes[i] = TWDR;
  }
  return stop(ok);
}

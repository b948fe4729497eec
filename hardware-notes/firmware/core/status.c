#include "status.h"

struct status_register status_operation, status_questionable;
uint8_t status_event_enable, status_service_enable;
static uint8_t events;

void status_power_on(void) {
  const struct status_register clear = {0, 0, 0};
  status_operation = status_questionable = clear;
  status_event_enable = status_service_enable = 0;
  events = EVENT_POWER_ON;
}

void status_clear_events(void) {
  events = 0;
  status_operation.event = status_questionable.event = 0;
}

void status_condition(struct status_register *reg, uint16_t bits, bool on) {
  if (on) reg->event |= (uint16_t)(bits & (uint16_t)~reg->condition);
  reg->condition = on ? (uint16_t)(reg->condition | bits) : (uint16_t)(reg->condition & (uint16_t)~bits);
}

uint16_t status_take_event(struct status_register *reg) {
  uint16_t event = reg->event;
  reg->event = 0;
  return event;
}

void status_event(uint8_t bits) { events |= bits; }

uint8_t status_take_events(void) {
  uint8_t taken = events;
  events = 0;
  return taken;
}

/* Bits: 2 errors waiting, 3 questionable, 5 standard event, 6 any of them enabled, 7 operation. */
uint8_t status_byte(bool errors_waiting) {
  uint8_t byte = 0;
  if (errors_waiting) byte |= 4u;
  if (status_questionable.event & status_questionable.enable) byte |= 8u;
  if (events & status_event_enable) byte |= 32u;
  if (status_operation.event & status_operation.enable) byte |= 128u;
  if (byte & status_service_enable) byte |= 64u;
  return byte;
}

/* Milliseconds from timer 0. */
#include <avr/interrupt.h>
#include <avr/io.h>
#include <util/atomic.h>
#include "hal.h"
#include "parts.h"

static volatile uint32_t milliseconds;

ISR(TIMER0_COMPA_vect) { milliseconds++; }

void clock_begin(void) {
  TCCR0A = _BV(WGM01);             /* clear on compare */
  TCCR0B = _BV(CS01) | _BV(CS00);  /* F_CPU / 64 */
  OCR0A = F_CPU / 64 / 1000 - 1;
  TIMSK0 = _BV(OCIE0A);
}

uint32_t hal_millis(void) {
  uint32_t now;
  ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { now = milliseconds; }
  return now;
}

void hal_pause_ms(uint16_t ms) {
  uint32_t start = hal_millis();
  while (hal_millis() - start <= ms) {
  } /* <=: the millisecond under way does not count */
}

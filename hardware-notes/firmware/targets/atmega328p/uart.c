/* The serial line: received bytes go to a ring by interrupt, sent bytes wait for the register. */
#include <avr/interrupt.h>
#include <avr/io.h>
#include "board.h"
#include "hal.h"
#include "parts.h"

#define RING 128 /* a power of two */
static volatile uint8_t ring[RING], put_at, take_at;
static volatile bool lost;

ISR(USART_RX_vect) {
  uint8_t status = UCSR0A, byte = UDR0, next = (uint8_t)((put_at + 1) & (RING - 1));
  if ((status & _BV(DOR0)) || next == take_at) lost = true;
  if (lost) return; /* keep the gap at the end of the ring until uart_lost() has told of it */
  ring[put_at] = (status & _BV(FE0)) ? 0 : byte; /* a byte without its stop bit spoils its line */
  put_at = next;
}

void uart_begin(void) {
  UBRR0 = (uint16_t)((F_CPU + 4 * BAUD) / (8 * BAUD) - 1);
  UCSR0A = _BV(U2X0);
  UCSR0C = _BV(UCSZ01) | _BV(UCSZ00);
  UCSR0B = _BV(RXEN0) | _BV(TXEN0) | _BV(RXCIE0);
}

bool uart_take(uint8_t *byte) {
  if (take_at == put_at) return false;
  *byte = ring[take_at];
  take_at = (uint8_t)((take_at + 1) & (RING - 1));
  return true;
}

/* Whether bytes were lost since the last call; says so only when the ring is empty, for there the gap is. */
bool uart_lost(void) {
  if (!lost || take_at != put_at) return false;
  lost = false;
  return true;
}

void hal_send(uint8_t byte) {
  while (!(UCSR0A & _BV(UDRE0))) {
  }
  UDR0 = byte;
}

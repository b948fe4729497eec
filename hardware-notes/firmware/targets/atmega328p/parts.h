/* The pieces of the ATmega328P layer that only its own main loop calls. */
#ifndef PARTS_H
#define PARTS_H
#include <stdbool.h>
#include <stdint.h>

void clock_begin(void);
void uart_begin(void);
bool uart_take(uint8_t *byte);
bool uart_lost(void);
void twi_begin(void);

#endif

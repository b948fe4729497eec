/* A board for the tests: a clock that moves only when the firmware waits, a modelled sensor, a captured line. */
#ifndef TEST_BOARD_H
#define TEST_BOARD_H
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include "virtual-as7341.h"

extern struct virtual_sensor board_sensor;
extern bool board_lamp_broken, board_button;
extern uint16_t board_thermistor;
extern uint8_t board_store[];
/* The store takes this many more bytes, then power fails: later writes do nothing. -1: no limit. */
extern int board_store_writes_left;
/* The bus acknowledges this many more transfers, then nothing. -1: no limit. */
extern int board_bus_transfers_left;

/* This transfer from now on fails, the others do not. 0: none. */
extern int board_bus_fails_once;

/* Power-on with an erased store, a white tile under the lamp, and no noise. */
void board_begin(void);
/* Power-on with whatever the store holds. */
void board_power_cycle(void);
void board_send(const char *text);
void board_send_bytes(const uint8_t *bytes, size_t n);
/* What was answered since the last call. */
const char *board_answer(void);
/* A message and its LF; the answer without its LF. */
const char *board_ask(const char *message);
void board_let_pass(uint32_t ms);

#endif

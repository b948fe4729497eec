/* The SCPI trigger model: idle, or waiting for the button. */
#ifndef TRIGGER_H
#define TRIGGER_H
#include <stdbool.h>
#include <stdint.h>

void trigger_power_on(void);
/* Presses since power-on, waited for or not; wraps around. */
uint16_t trigger_presses(void);
void trigger_reset(void);
bool trigger_source_is_button(void);
void trigger_source_set(bool button);
/*
 * INITiate: takes a frame now, or begins to wait for a press that begins after this; queues -213 when already waiting.
 */
void trigger_initiate(void);
void trigger_abort(void);
/* Watches the button; call often. */
void trigger_poll(void);

#endif

/* What the simulated board's pins are connected to. Bench only; see LICENSE.md. */
#ifndef WIRES_H
#define WIRES_H
#include <simavr/sim_avr.h>
#include "bench-words.h"

/* Corrects two faults of the two-wire interface of simavr 1.6; no effect on versions without them. */
void wires_correct_twi(avr_t *avr);
/* Sensor on the two-wire bus, lamp, thermistor, lamp sense and button. */
void wires_connect(avr_t *avr, struct scene *scene);
/* Bytes of RAM between the firmware's own data and the deepest the stack went since the last reset. */
unsigned wires_stack_left(const avr_t *avr);
void wires_paint_stack(avr_t *avr, unsigned data_end);

/* After a reset of the chip, which forgets its input levels while the wires still think they told it. */
void wires_after_reset(avr_t *avr);
/* Brings the slowly changing pins up to date. */
void wires_update(avr_t *avr, struct scene *scene);

#endif

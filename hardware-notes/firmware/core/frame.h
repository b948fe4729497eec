/* One frame: raw counts and the settings they were taken with. */
#ifndef FRAME_H
#define FRAME_H
#include <stdbool.h>
#include <stdint.h>

/* Numbers begin again; head_reset() forgets the frame itself. */
void frame_power_on(void);
/* Takes a frame with the present settings. On failure queues the error, leaves no frame and returns false. */
bool frame_take(bool dark);
void frame_forget(void);
bool frame_exists(void);
/* Number of the last frame taken; 0 before the first one since power-on. */
uint16_t frame_number(void);
/* Answers the last frame taken. */
void frame_reply(void);
/* Temperature now, 0.01 K; 0 when the thermistor does not answer. Keeps the status bits up to date. */
uint16_t frame_temperature(void);
/* Switches the lamp to its state between readings. */
void frame_lamp_rest(void);
/* Whether the lamp draws current when switched on. */
bool frame_lamp_works(void);

#endif

/* The head as a whole: what a board's main loop calls. */
#ifndef HEAD_H
#define HEAD_H
#include <stdint.h>

#define HEAD_MODEL "HEAD-8"
#define HEAD_FIRMWARE "0.1.0"
#define HEAD_PROTOCOL "1.1"
#ifndef HEAD_SERIAL
#define HEAD_SERIAL "0" /* set when building: make SERIAL=SN0001 */
#endif

/* Once after power-on, before anything else. */
void head_power_on(void);
/* *RST. */
void head_reset(void);
/* One byte from the host; carries out the message when it ends one. */
void head_receive(uint8_t byte);
/* Bytes from the host were lost because nobody took them: the line they belong to is dropped with -363. */
void head_overrun(void);
/* Often, between bytes. */
void head_poll(void);

#endif

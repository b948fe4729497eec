/* The SCPI error queue: 16 deep, oldest first; overflow turns the newest entry into -350. */
#ifndef ERRORS_H
#define ERRORS_H
#include <stdbool.h>
#include <stdint.h>
#include "flash.h"

#define ERROR_QUEUE_DEPTH 16

#define ERROR_SYNTAX (-102)
#define ERROR_DATA_TYPE (-104)
#define ERROR_PARAMETER_NOT_ALLOWED (-108)
#define ERROR_MISSING_PARAMETER (-109)
#define ERROR_UNDEFINED_HEADER (-113)
#define ERROR_INIT_IGNORED (-213)
#define ERROR_OUT_OF_RANGE (-222)
#define ERROR_ILLEGAL_VALUE (-224)
#define ERROR_STALE (-230)
#define ERROR_HARDWARE (-240)
#define ERROR_HARDWARE_MISSING (-241)
#define ERROR_QUEUE_OVERFLOW (-350)
#define ERROR_INPUT_OVERRUN (-363)
#define ERROR_SATURATED 510
#define ERROR_LAMP 512

void errors_clear(void);
/* Queues an error and sets its bit of the standard event register. `detail` (may be null) follows the text. */
void errors_push(int16_t number, const FLASH char *detail);
uint8_t errors_count(void);
/* Answers the oldest entry as two fields and removes it; 0,"No error" when empty. */
void errors_reply_next(void);

#endif

/*
 * The response to one program message: answers of its units joined by ';', fields of an answer joined by ',', the
 * checksum field last when asked for, LF. Nothing is buffered: each byte goes to hal_send() as it is made.
 */
#ifndef REPLY_H
#define REPLY_H
#include <stdbool.h>
#include <stdint.h>
#include "flash.h"

void reply_begin_message(void);
void reply_begin_unit(void);
void reply_end_message(bool checksum);

/* Each of these is one field. */
void reply_integer(int32_t value);
/* value x 10^-decimals as NR2 without trailing zeros, or NR1 where it is whole. */
void reply_fixed(uint32_t value, uint8_t decimals);
/* value x 10^power as NR3 with all significant digits. */
void reply_scientific(uint32_t value, int8_t power);
void reply_text(const FLASH char *text);
void reply_quoted(const FLASH char *text);
/* "text;detail" in quotes; detail may be null. */
void reply_quoted_pair(const FLASH char *text, const FLASH char *detail);
void reply_not_a_number(void);
void reply_over_range(void);

#endif

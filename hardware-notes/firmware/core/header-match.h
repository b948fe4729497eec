#ifndef HEADER_MATCH_H
#define HEADER_MATCH_H
#include <stdbool.h>
#include "flash.h"

/*
 * Whether a received header is the command of a pattern such as "SYSTem:ERRor[:NEXT]?". Each node must be its short
 * form (the capitals) or its whole form, in any case; nodes in square brackets may be left out.
 */
bool header_matches(const FLASH char *pattern, const char *header);

#endif

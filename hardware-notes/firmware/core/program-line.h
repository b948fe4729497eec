/* Collects the bytes of one program message: LF, CR or CRLF ends it. */
#ifndef PROGRAM_LINE_H
#define PROGRAM_LINE_H
#include <stdint.h>

#define PROGRAM_LINE_LIMIT 255

enum line_state {
  LINE_OPEN,     /* not ended yet, or empty */
  LINE_COMPLETE, /* program_line() holds it */
  LINE_OVERLONG, /* ended after more than the limit; dropped */
  LINE_SPOILT    /* ended, but held bytes outside 0x20..0x7E and TAB; dropped */
};
void program_line_reset(void);
enum line_state program_line_add(uint8_t byte);
/* Bytes were lost before they could be added: the line they belong to will end as LINE_OVERLONG. */
void program_line_lost(void);
/* The complete line, zero-terminated; valid and writable until the next byte is added. */
char *program_line(void);

#endif

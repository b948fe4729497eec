#include "program-line.h"

static char buffer[PROGRAM_LINE_LIMIT + 1];
static uint8_t used;
static enum line_state fault;

void program_line_reset(void) {
  used = 0;
  fault = LINE_OPEN;
}

void program_line_lost(void) { fault = LINE_OVERLONG; }
char *program_line(void) { return buffer; }

enum line_state program_line_add(uint8_t byte) {
  if (byte == '\n' || byte == '\r') {
    enum line_state state = fault != LINE_OPEN ? fault : used > 0 ? LINE_COMPLETE : LINE_OPEN;
    buffer[used] = 0;
    program_line_reset();
    return state;
  }
  if (fault == LINE_OVERLONG) return LINE_OPEN;
  if (used == PROGRAM_LINE_LIMIT) fault = LINE_OVERLONG;
  else if (byte != '\t' && (byte < 0x20 || byte > 0x7E)) fault = LINE_SPOILT, used++;
  else buffer[used++] = (char)byte;
  return LINE_OPEN;
}

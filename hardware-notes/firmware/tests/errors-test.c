#include "errors.h"
#include <stdio.h>
#include "board.h"
#include "check.h"

void test_errors(void) {
  board_begin();
  ASK("SYST:ERR?", "0,\"No error\"");
  for (int i = 0; i < ERROR_QUEUE_DEPTH; i++) ASK("INP:GAIN 3", "");
  ASK("SYST:ERR:COUN?", "16");
  ASK("NO:SUCH", ""); /* does not fit: the newest of the sixteen becomes -350 */
  ASK("SYST:ERR:COUN?", "16");
  for (int i = 0; i < ERROR_QUEUE_DEPTH - 1; i++) ASK("SYST:ERR?", "-222,\"Data out of range\"");
  ASK("SYST:ERR?", "-350,\"Queue overflow\"");
  ASK("SYST:ERR?", "0,\"No error\"");
  for (int lap = 0; lap < 40; lap++) { /* the ring goes round */
    ASK("NO:SUCH;INP:GAIN x", "");
    ASK("SYST:ERR?;SYST:ERR?", "-113,\"Undefined header\";-104,\"Data type error\"");
  }
  ASK("NO:SUCH", "");
  ASK("*CLS;SYST:ERR?", "0,\"No error\"");
  for (int16_t number = -500; number < 600; number++) errors_push(number, 0);
  while (errors_count()) errors_reply_next(); /* a number without a text answers an empty one */
}

#include <string.h>
#include "board.h"
#include "check.h"
#include "head.h"

static void send_run(char c, int n) {
  for (int i = 0; i < n; i++) head_receive((uint8_t)c);
}

void test_program_line(void) {
  board_begin();
  board_send("*OPC?\n");
  CHECK_TEXT(board_answer(), "1\n");
  board_send("*OPC?\r");
  CHECK_TEXT(board_answer(), "1\n");
  board_send("*OPC?\r\n\n\r\r\n");
  CHECK_TEXT(board_answer(), "1\n");
  ASK("SYST:ERR:COUN?", "0");

  board_send("*OPC?"); /* 255 bytes with the blanks after it: the most there may be */
  send_run(' ', 250);
  ASK("", "1");
  board_send("*OPC?"); /* one more: dropped to its end */
  send_run(' ', 251);
  ASK("", "");
  ASK("SYST:ERR?", "-363,\"Input buffer overrun\"");
  send_run('A', 70000);
  ASK("", "");
  ASK("*OPC?;SYST:ERR:COUN?", "1;1");
  ASK("SYST:ERR?", "-363,\"Input buffer overrun\"");

  const uint8_t bytes_outside[] = {0, 1, 0x1F, 0x7F, 0x80, 0xFF};
  for (unsigned i = 0; i < sizeof bytes_outside; i++) {
    board_send("*OPC?");
    head_receive(bytes_outside[i]);
    ASK("", "");
    ASK("SYST:ERR?", "-102,\"Syntax error\"");
  }
  ASK("\t*OPC?\t", "1");

  board_send("*OP"); /* bytes lost by the board */
  head_overrun();
  ASK("C?", "");
  ASK("SYST:ERR?", "-363,\"Input buffer overrun\"");
  ASK("*OPC?", "1");
}

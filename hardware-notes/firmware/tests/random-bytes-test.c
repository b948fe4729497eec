/* Whatever comes in, the head answers whole printable lines, stays in its ranges, and is in step afterwards. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include "board.h"
#include "check.h"
#include "settings.h"

static const char *const words[] = {
    "*IDN?", "*OPC?", "*RST", "*TST?", "READ?", "READ:DARK?", "FETC?", "INIT", "ABOR", "TRIG:SOUR", "EXT", "IMM", "INP:GAIN",
    "SENS:APER", "SENS:AVER:COUN", "SENS:CHAN:CAT?", "SYST:ERR?", "SYST:COMM:CRC", "CAL:CHAN", "CAL:DEF", "STAT:OPER:COND?",
    "OUTP", "*ESE", "*SRE", "*STB?", "MIN", "MAX", "DEF", "ON", "OFF", "0", "1", "64", "0.182", "1E-1", "427NM", "9", "-1",
    "1E999", ";", ";:", ",", " ", ":", "?", "\"", "[", "]", "\n", "\r\n", "\n", "\n",
};
#define WORDS (sizeof words / sizeof words[0])

static void check_answer(const char *answer) {
  size_t line = 0;
  for (const char *c = answer; *c; c++) {
    line = *c == '\n' ? 0 : line + 1;
    CHECK(*c == '\n' || (*c >= 0x20 && *c <= 0x7E));
    CHECK(line <= 4096);
  }
  CHECK(line == 0); /* every answer is ended */
}

static void check_in_step(void) {
  board_send("\n");
  board_answer();
  ASK("SYST:COMM:CRC 0;*OPC?", "1");
  CHECK(settings.gain_code <= 10 && settings.averages >= 1 && settings.averages <= AVERAGES_MOST);
  CHECK(settings.steps >= 18 && settings.steps <= 3597);
}

static void random_words(void) {
  board_send(words[(unsigned)rand() % WORDS]);
}

static void random_bytes(void) {
  uint8_t bytes[64];
  size_t n = (size_t)rand() % sizeof bytes;
  for (size_t i = 0; i < n; i++) bytes[i] = (uint8_t)rand();
  board_send_bytes(bytes, n);
}

static void damaged_message(void) {
  char message[] = "SYST:COMM:CRC 1;:INP:GAIN 128;:SENS:APER 10 MS;:SENS:CHAN:CAT? 1,10;:READ?\n";
  for (int i = rand() % 4; i >= 0; i--) message[(unsigned)rand() % (sizeof message - 2)] = (char)rand();
  board_send(message);
}

void test_random_bytes(void) {
  board_begin();
  srand(20);
  for (int i = 0; i < 60000; i++) {
    int kind = rand() % 8;
    if (kind < 5) random_words();
    else if (kind < 7) random_bytes();
    else damaged_message();
    if (rand() % 16 == 0) board_button = !board_button, board_let_pass(25);
    check_answer(board_answer());
    if (rand() % 8 == 0) check_in_step();
  }
}

#include "channel-store.h"
#include <string.h>
#include "board.h"
#include "check.h"
#include "hal.h"

static void test_keeping(void) {
  board_begin();
  ASK("CAL:CHAN 1,427NM,3.1E-8;:SENS:CHAN:CAT? 1,1;:SYST:ERR?", "\"F1\",4.27E-7,3.1E-8;0,\"No error\"");
  board_power_cycle();
  ASK("SENS:CHAN:CAT? 1,2", "\"F1\",4.27E-7,3.1E-8,\"F2\",4.45E-7,3E-8");
  for (int i = 0; i < 600; i++) { /* the slots take turns, the sequence number goes round */
    ASK(i & 1 ? "CAL:CHAN 2,446NM,30NM" : "CAL:CHAN 2,447NM,30NM", "");
    board_power_cycle();
    ASK("SENS:CHAN:CAT? 2,1", i & 1 ? "\"F2\",4.46E-7,3E-8" : "\"F2\",4.47E-7,3E-8");
  }
  ASK("CAL:DEF;:SENS:CHAN:CAT? 1,1", "\"F1\",4.15E-7,2.6E-8");
  board_power_cycle();
  ASK("SENS:CHAN:CAT? 1,1;*TST?", "\"F1\",4.15E-7,2.6E-8;0");
}

static void test_refusing(void) {
  board_begin();
  ASK("CAL:CHAN 11,427NM,31NM;SYST:ERR?", "-222,\"Data out of range\"");
  ASK("CAL:CHAN 9,427NM,31NM;SYST:ERR?", "-222,\"Data out of range;channel without a centre\"");
  ASK("CAL:CHAN 1,427,31;SYST:ERR?", "-222,\"Data out of range\""); /* metres */
  ASK("CAL:CHAN 1,427NM;SYST:ERR?", "-109,\"Missing parameter\"");
  for (int i = 0; i < STORE_BYTES; i++) CHECK(board_store[i] == 0xFF);
}

/* Power fails after each byte of a save: the old values or the new ones come back, nothing else. */
static void test_power_loss(void) {
  for (int writes = 0; writes < 50; writes++) {
    board_begin();
    board_ask("CAL:CHAN 1,420NM,30NM");
    board_store_writes_left = writes;
    board_ask("CAL:CHAN 1,430NM,40NM");
    board_power_cycle();
    const char *answer = board_ask("SENS:CHAN:CAT? 1,1;*TST?");
    CHECK_TEXT(answer, writes < 47 ? "\"F1\",4.2E-7,3E-8;0" : "\"F1\",4.3E-7,4E-8;0");
  }
}

static void test_damage(void) {
  board_begin();
  board_ask("CAL:CHAN 1,420NM,30NM");
  for (int bit = 0; bit < 47 * 8; bit++) { /* the one slot that is written, one bit at a time */
    board_store[bit / 8] ^= (uint8_t)(1u << bit % 8);
    board_power_cycle();
    ASK("SENS:CHAN:CAT? 1,1;*TST?;STAT:QUES:COND?", "\"F1\",4.15E-7,2.6E-8;4;256");
    board_store[bit / 8] ^= (uint8_t)(1u << bit % 8);
  }
  board_store[10] ^= 1;
  board_power_cycle();
  ASK("CAL:DEF;*TST?;STAT:QUES:COND?", "0;0");
}

void test_channel_store(void) {
  test_keeping();
  test_refusing();
  test_power_loss();
  test_damage();
}

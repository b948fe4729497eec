#include <string.h>
#include "board.h"
#include "check.h"

static void press(uint32_t ms) {
  board_button = true;
  board_let_pass(ms);
  board_button = false;
  board_let_pass(50);
}

void test_trigger(void) {
  board_begin();
  press(100); /* nobody waits for it */
  ASK("FETC?", "9.91E37");
  ASK("*CLS;TRIG:SOUR EXT;:INIT;:STAT:OPER:COND?", "32");
  board_let_pass(1000);
  ASK("STAT:OPER:COND?", "32");
  press(10); /* shorter than the contacts bounce */
  ASK("STAT:OPER:COND?", "32");
  for (int i = 0; i < 10; i++) { /* bouncing */
    board_button = !board_button;
    board_let_pass(3);
  }
  ASK("STAT:OPER:COND?", "32");
  press(100);
  ASK("STAT:OPER:COND?", "0");
  CHECK(strncmp(board_ask("FETC?"), "1,0,64,", 7) == 0);
  press(100); /* one INIT, one frame */
  CHECK(strncmp(board_ask("FETC?"), "1,0,64,", 7) == 0);
  ASK("SYST:ERR?", "0,\"No error\"");

  ASK("INIT;INIT;SYST:ERR?", "-213,\"Init ignored\"");
  ASK("FETC?;SYST:ERR?", "9.91E37;-230,\"Data corrupt or stale\""); /* INIT forgot the last frame */
  ASK("ABOR;STAT:OPER:COND?", "0");
  press(100);
  ASK("FETC?", "9.91E37");
  ASK("*CLS;INIT", "");
  CHECK(strncmp(board_ask("READ?"), "2,0,64,", 7) == 0); /* at once, and the wait is over */
  ASK("STAT:OPER:COND?", "0");

  board_button = true; /* held down before INIT: a new press is wanted */
  board_let_pass(100);
  ASK("INIT", "");
  board_let_pass(500);
  ASK("STAT:OPER:COND?", "32");
  board_button = false;
  board_let_pass(100);
  press(100);
  ASK("STAT:OPER:COND?", "0");

  /* Counted, waited for or not; a press begun before INIT ends no wait begun by it. */
  board_begin();
  ASK("TRIG:COUN?", "0");
  press(100);
  ASK("ABOR;TRIG:SOUR EXT;SENS:FRAM?;INIT;TRIG:COUN?;SYST:ERR?", "0;1;0,\"No error\"");
  press(100);
  ASK("ABOR;SENS:FRAM?;INIT;TRIG:COUN?", "1;2"); /* noticed before the next wait */
  board_button = true;
  board_let_pass(5);
  ASK("ABOR;SENS:FRAM?;INIT;TRIG:COUN?", "1;3"); /* still bouncing */
  board_let_pass(500);
  board_button = false;
  board_let_pass(100);
  ASK("STAT:OPER:COND?;TRIG:COUN?", "32;3");
  board_button = true; /* at the very moment: the core has not seen it yet */
  ASK("ABOR;SENS:FRAM?;INIT;TRIG:COUN?", "1;4");
  board_button = false; /* shorter than the contacts bounce, and not a second press when it comes up */
  board_let_pass(100);
  ASK("STAT:OPER:COND?;TRIG:COUN?", "32;4");
  press(100);
  ASK("STAT:OPER:COND?;SENS:FRAM?;TRIG:COUN?", "0;2;5");
  ASK("*RST;TRIG:COUN?", "5"); /* *RST counts on, power begins anew */

  ASK("TRIG:SOUR EXT;INIT", "");
  ASK("*RST;STAT:OPER:COND?;TRIG:SOUR?", "0;IMM");
  ASK("TRIG:SOUR EXT;INIT", "");
  board_sensor.absent = true; /* a press that fails leaves no frame, and says why */
  press(100);
  ASK("SYST:ERR?;FETC?", "-241,\"Hardware missing;sensor\";9.91E37");
}

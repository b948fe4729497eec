/* Event bits by error class: IEEE 488.2 and SCPI-1999 volume 2, 21.8. */
#include "board.h"
#include "check.h"

void test_status(void) {
  board_begin();
  ASK("*ESR?", "128");
  ASK("*ESR?", "0");
  ASK("NO:SUCH;*ESR?", "32");
  ASK("INP:GAIN 3;*ESR?", "16");
  ASK("*OPC;*WAI;*ESR?", "1");
  ASK("*CLS;*STB?", "0");
  ASK("NO:SUCH;*STB?", "4");
  ASK("*ESE 32;*ESE?;*STB?", "32;36");
  ASK("*SRE 32;*SRE?;*STB?", "32;100");
  ASK("*SRE 255;*SRE?", "191");
  ASK("*ESE 256;*ESE?;SYST:ERR?;SYST:ERR?", "32;-113,\"Undefined header\";-222,\"Data out of range\"");
  ASK("*CLS;*ESR?;*STB?", "0;0");

  ASK("*SRE 0;STAT:OPER:ENAB 16;ENAB?", "");
  ASK("*CLS;STAT:OPER:ENAB?;STAT:OPER?;STAT:OPER:COND?", "16;0;0");
  board_ask("INIT");
  ASK("*STB?", "128"); /* it was MEASuring */
  ASK("STAT:OPERATION:EVENT?;STAT:OPER?", "16;0");
  ASK("STAT:OPER:ENAB 65535;STAT:OPER:ENAB?", "32767");
  ASK("STAT:QUES:ENAB 16;STAT:QUES:ENAB?", "16");
  board_thermistor = 1023;
  ASK("MEAS:TEMP?;STAT:QUES:COND?;*STB?", "9.91E37;16;8");
  board_thermistor = 512;
  ASK("MEAS:TEMP?;STAT:QUES:COND?;STAT:QUES?;STAT:QUES?", "2.9815E2;0;16;0");
  ASK("STAT:PRES;STAT:QUES:ENAB?;STAT:OPER:ENAB?", "0;0");

  board_let_pass(70000);
  ASK("STAT:OPER:COND?", "0");
  board_thermistor = 490; /* about a kelvin warmer */
  board_let_pass(1500);
  ASK("STAT:OPER:COND?", "2");
  board_let_pass(130000);
  ASK("STAT:OPER:COND?", "0");
}

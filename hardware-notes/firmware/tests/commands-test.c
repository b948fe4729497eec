/* The exchanges of hardware-notes/protocol.md. */
#include <stdio.h>
#include <string.h>
#include "board.h"
#include "check.h"
#include "crc16.h"

static void test_grammar(void) {
  board_begin();
  ASK("*IDN?", "TINTLADDER,HEAD-8,SN0001,0.1.0");
  ASK("*IDN?;*OPC?", "TINTLADDER,HEAD-8,SN0001,0.1.0;1");
  ASK(" *OPC? ; :SYST:VERS? ;; ", "1;1999.0");
  ASK(":*OPC?", "1");
  ASK(";", "");
  ASK("SYST:PROT:VERS?;:SENS:CHAN:COUN?", "1.1;10");
  ASK("SYST:ERR?", "0,\"No error\"");
  ASK("NO:SUCH;*OPC?", "1"); /* a unit that fails adds nothing, the next is done */
  ASK("SYST:ERR?", "-113,\"Undefined header\"");
  ASK("INP:GAIN;SYST:ERR?", "-109,\"Missing parameter\"");
  ASK("INP:GAIN 1,2;SYST:ERR?", "-108,\"Parameter not allowed\"");
  ASK("INP:GAIN 1,2,3,4,5,6;SYST:ERR?", "-108,\"Parameter not allowed\"");
  ASK("*OPC? 1;SYST:ERR?", "-108,\"Parameter not allowed\"");
  ASK("INP:GAIN \"1;2\";SYST:ERR?", "-104,\"Data type error\"");
  ASK("INP:GAIN \";SYST:ERR?", "");
  ASK("SYST:ERR?", "-104,\"Data type error\"");
  ASK("AT", ""); /* what a modem manager says to every new port */
  ASK("SYST:ERR?", "-113,\"Undefined header\"");
}

static void test_settings(void) {
  board_begin();
  ASK("INP:GAIN?;:SENS:APER?;:SENS:AVER:COUN?;:OUTP?;:TRIG:SOUR?", "64;1.8209E-1;1;0;IMM");
  ASK("INP:GAIN 64;:SENS:APER 0.182;:SYST:ERR?", "0,\"No error\"");
  ASK("SENS:APER?", "1.8209E-1");
  ASK("INP:GAIN:CAT?", "0.5,1,2,4,8,16,32,64,128,256,512");
  ASK("INP:GAIN 0.5;INP:GAIN?;INP:GAIN MAX;INP:GAIN?;INP:GAIN DEF;INP:GAIN?", "0.5;512;64");
  ASK("INP:GAIN MINIMUM;INP:GAIN?;SENS:APER MIN;SENS:APER?;SENS:AVER:COUN MIN;SENS:AVER:COUN?", "0.5;5.004E-3;1");
  ASK("SENS:APER MAXIMUM;SENS:APER?;SENS:APER DEFAULT;SENS:APER?;INP:GAIN DEF", "9.99966E-1;1.8209E-1");
  ASK("INP:GAIN 3", "");
  ASK("SYST:ERR?", "-222,\"Data out of range\"");
  ASK("INP:GAIN x;SYST:ERR?", "-104,\"Data type error\"");
  ASK("INP:GAIN 1E99;SYST:ERR?", "-222,\"Data out of range\"");
  ASK("INP:GAIN -64;SYST:ERR?", "-222,\"Data out of range\"");
  ASK("INP:GAIN?", "64");
  ASK("INP:GAIN? MIN;:INP:GAIN? MAX;:INP:GAIN? DEF;:SYST:ERR?", "0.5;512;-224,\"Illegal parameter value\"");
  ASK("SENS:APER? MIN;:SENS:APER? MAX", "5.004E-3;9.99966E-1");
  ASK("SENS:APER 200 MS;APER?;SENS:APER?", "1.99882E-1");
  ASK("SYST:ERR?", "-113,\"Undefined header\""); /* APER? alone: relative headers are not used */
  ASK("SENS:RANG?;SENS:RANG:UPP?", "65535;65535");
  ASK("SENS:APER 182MS;SENS:RANG?", "65500");
  ASK("SENS:APER 1.1;SYST:ERR?;SENS:APER 5E-3;SYST:ERR?", "-222,\"Data out of range\";-222,\"Data out of range\"");
  ASK("SENS:AVER:COUN 64;SENS:AVER:COUN?;SENS:AVER:COUN? MAX", "64;64");
  ASK("SENS:AVER:COUN 65;SYST:ERR?;SENS:AVER:COUN 1.5;SYST:ERR?;SENS:AVER:COUN?",
      "-222,\"Data out of range\";-222,\"Data out of range\";64");
  ASK("OUTP ON;OUTP?;OUTP:STAT OFF;OUTP?;OUTP 1;OUTP?", "1;0;1");
  ASK("OUTP 2;SYST:ERR?;OUTP MAYBE;SYST:ERR?;OUTP 0.5;SYST:ERR?",
      "-222,\"Data out of range\";-104,\"Data type error\";-222,\"Data out of range\"");
  ASK("TRIG:SOUR EXTERNAL;TRIG:SEQ:SOUR?;TRIG:SOUR BUTTON;SYST:ERR?", "EXT;-224,\"Illegal parameter value\"");
  ASK("*RST;INP:GAIN?;:SENS:APER?;:SENS:AVER:COUN?;:OUTP?;:TRIG:SOUR?", "64;1.8209E-1;1;0;IMM");
}

static void test_self_description(void) {
  board_begin();
  ASK("SENS:FUNC?;SENS:GEOM?;SENS:CHAN:COUN?;SENS:PASS?", "\"BAND\";\"45/0\";10;2");
  ASK("SENS:CHAN:CAT? 1,2", "\"F1\",4.15E-7,2.6E-8,\"F2\",4.45E-7,3E-8");
  ASK("SENS:CHAN:CAT? 9,2", "\"CLEAR\",9.91E37,9.91E37,\"NIR\",9.1E-7,1E-7");
  ASK("SENS:CHAN:CAT? 9,3;SYST:ERR?", "-222,\"Data out of range\"");
  ASK("SENS:CHAN:CAT? 0,1;SYST:ERR?", "-222,\"Data out of range\"");
  ASK("SENS:CHAN:CAT? 1;SYST:ERR?", "-109,\"Missing parameter\"");
  int commas = 0;
  for (const char *c = board_ask("SENS:CHAN:CAT?"); *c; c++) commas += *c == ',';
  CHECK(commas == 29);
  ASK("SENS:CHAN:RESP? 1;:SOUR:CURR?;:MEAS:XYZ?;:SYST:ERR:COUN?", "3"); /* optional ones this head does without */
}

static void test_checksum(void) {
  board_begin();
  ASK("SENS:FRAM?", "0");
  board_ask("READ?");
  ASK("SENS:FRAM?", "1");
  ASK("SYST:COMM:CRC 1;:SYST:ERR?", "0,\"No error\",#H425F"); /* the example of protocol.md */
  const char *answer = board_ask("READ?");
  const char *field = strstr(answer, ",#H");
  CHECK(field != 0 && strlen(field) == 7);
  uint16_t crc = CRC16_START;
  char hexadecimal[8];
  for (const char *c = answer; c < field; c++) crc = crc16_add(crc, (uint8_t)*c);
  snprintf(hexadecimal, sizeof hexadecimal, ",#H%04X", crc);
  CHECK_TEXT(field, hexadecimal);
  ASK("INP:GAIN 64", ""); /* no answer: no checksum either */
  ASK("*RST;SYST:COMM:CRC?", "1,#HC782"); /* as Python has it: binascii.crc_hqx(b"1", 0xFFFF) */
  ASK("SYST:COMM:CRC 0;SYST:COMM:CRC?", "0");
  ASK("SYST:COMM:CRC 1", "");
  board_power_cycle();
  ASK("SYST:COMM:CRC?", "0");
}

void test_commands(void) {
  test_grammar();
  test_settings();
  test_self_description();
  test_checksum();
}

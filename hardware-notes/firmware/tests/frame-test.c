#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include "board.h"
#include "check.h"
#include "sensor.h"

/* Counts without noise: light x gain x milliseconds, e.g. 1 x 64 x 182.09 = 11653.8. */
#define WHITE "11654,17481,23308,29134,34961,40788,34961,23308,58269,11654"

static void test_good_frames(void) {
  board_begin();
  ASK("READ?", "1,0,64,1.8209E-1,1,2.9815E2,10," WHITE);
  ASK("FETC?", "1,0,64,1.8209E-1,1,2.9815E2,10," WHITE);
  ASK("READ:DARK?", "2,4,64,1.8209E-1,0,2.9815E2,10,0,0,0,0,0,0,0,0,0,0");
  ASK("INIT;FETC?", "3,0,64,1.8209E-1,1,2.9815E2,10," WHITE);
  ASK("MEAS:COUN?", "4,0,64,1.8209E-1,1,2.9815E2,10," WHITE);
  ASK("SENS:AVER:COUN 3;:CONF:COUN;:READ?", "5,0,64,1.8209E-1,1,2.9815E2,10," WHITE);
  board_sensor.flicker = 0.0001; /* the passes differ by 0.01 %: no flag */
  ASK("SENS:AVER:COUN 2;:READ?", "6,0,64,1.8209E-1,1,2.9815E2,10,11654,17481,23308,29134,34965,40792,34965,23310,58269,11654");
  board_sensor.flicker = 0;
  board_sensor.noise = 0.5; /* a mean of two counts may end in a half, of four in a quarter */
  CHECK(strstr(board_ask("SENS:AVER:COUN 2;:READ?"), ".5,") != 0);
  CHECK(strstr(board_ask("SENS:AVER:COUN 4;:READ?"), "5,") != 0);
  board_sensor.noise = 0;
  ASK("*RST;FETC?;SYST:ERR?", "9.91E37;-230,\"Data corrupt or stale\"");
  ASK("OUTP 1", "");
  CHECK(board_sensor.lamp);
  board_ask("READ:DARK?");
  CHECK(board_sensor.lamp);
  ASK("OUTP 0", "");
  board_ask("READ?");
  CHECK(!board_sensor.lamp);
}

static void test_saturation(void) {
  board_begin();
  board_sensor.lit[6] = 6; /* F7 past 65500 */
  ASK("READ?", "1,1,64,1.8209E-1,1,2.9815E2,10,11654,17481,23308,29134,34961,40788,9.9E37,23308,58269,11654");
  ASK("SYST:ERR?;SYST:ERR?;STAT:QUES:COND?", "510,\"Channel saturated;F7\";0,\"No error\";512");
  board_sensor.lit[6] = 3;
  board_sensor.saturate_once = true; /* one of four averaged frames is enough */
  ASK("SENS:AVER:COUN 4;:READ?", "2,1,64,1.8209E-1,1,2.9815E2,10,11654,17481,23308,29134,34961,40788,9.9E37,23308,58269,11654");
  ASK("SYST:ERR?", "510,\"Channel saturated;F7\"");
  ASK("*RST;READ?;SYST:ERR?;STAT:QUES:COND?", "3,0,64,1.8209E-1,1,2.9815E2,10," WHITE ";0,\"No error\";0");
  board_sensor.analogue_saturated = true; /* the counts look innocent, the flag does not */
  ASK("READ?;SYST:ERR?", "4,2,64,1.8209E-1,1,2.9815E2,10," WHITE ";510,\"Channel saturated;analogue\"");
  board_sensor.analogue_saturated = false;
  board_sensor.lit[8] = 5.63; /* clear is a channel as well */
  board_ask("READ?");
  ASK("SYST:ERR?", "510,\"Channel saturated;CLEAR\"");
}

static void test_light(void) {
  board_begin();
  board_sensor.flicker = 0.05; /* brighter in the second pass */
  CHECK(strncmp(board_ask("READ?"), "1,16,64,", 8) == 0);
  board_sensor.flicker = 0;
  for (int i = 0; i < VIRTUAL_CHANNELS; i++) board_sensor.ambient[i] = 0.3;
  board_ask("READ:DARK?");
  ASK("STAT:QUES:COND?", "4096");
  for (int i = 0; i < VIRTUAL_CHANNELS; i++) board_sensor.ambient[i] = 0;
  board_ask("READ:DARK?");
  ASK("STAT:QUES:COND?", "0");
  for (int i = 0; i < VIRTUAL_CHANNELS; i++) board_sensor.lit[i] = 0.01;
  board_ask("READ?");
  ASK("STAT:QUES:COND?;SYST:ERR?", "1024;0,\"No error\""); /* a black swatch is no error */
  board_sensor.lit[SENSOR_CLEAR] = 5; /* the bands count, not the clear channel */
  board_ask("READ?");
  ASK("STAT:QUES:COND?", "1024");
  for (int i = 0; i < VIRTUAL_CHANNELS; i++) board_sensor.lit[i] = 2;
  board_sensor.lit[SENSOR_CLEAR] = 5.5; /* full in the second pass only: saturated, which says enough */
  board_sensor.flicker = 0.1;
  CHECK(strncmp(strchr(board_ask("READ?"), ','), ",1,64,", 6) == 0);
}

static void test_broken_parts(void) {
  board_begin();
  board_sensor.absent = true;
  ASK("READ?;SYST:ERR?;*TST?", "9.91E37;-241,\"Hardware missing;sensor\";1");
  ASK("FETC?", "9.91E37");
  board_sensor.absent = false;
  ASK("*CLS;*TST?;FETC?", "0;9.91E37");
  board_sensor.registers[0x92] = 0x10; /* another chip at this address */
  ASK("*CLS;READ?;SYST:ERR?;*TST?", "9.91E37;-241,\"Hardware missing;sensor\";1");
  board_sensor.registers[0x92] = 0x24;
  board_sensor.stuck = true; /* it acknowledges, but no conversion ever ends: given up after a while */
  ASK("*CLS;READ?;SYST:ERR?", "9.91E37;-240,\"Hardware error;sensor\"");
  board_sensor.stuck = false;
  board_lamp_broken = true; /* a frame without its light is no frame */
  ASK("*CLS;READ?;SYST:ERR?;*TST?;STAT:QUES:COND?", "9.91E37;512,\"Lamp;no current\";2;2048");
  ASK("READ:DARK?", "1,4,64,1.8209E-1,0,2.9815E2,10,0,0,0,0,0,0,0,0,0,0");
  board_lamp_broken = false;
  board_thermistor = 0;
  ASK("*CLS;READ?", "2,0,64,1.8209E-1,1,9.91E37,10," WHITE);
  board_thermistor = 512;
  for (int transfers = 1;; transfers++) { /* the wire breaks at each transfer of a frame */
    board_bus_transfers_left = transfers;
    const char *answer = board_ask("*CLS;READ?");
    if (strcmp(answer, "9.91E37") != 0) {
      CHECK(transfers > 20 && strstr(answer, WHITE) != 0);
      break;
    }
    int number = atoi(board_ask("SYST:ERR?"));
    CHECK(number == -240 || number == -241);
  }
  board_bus_transfers_left = -1;
  for (int transfer = 1;; transfer++) { /* one transfer of a frame fails, the next goes well: still no frame */
    board_bus_fails_once = transfer;
    const char *answer = board_ask("*CLS;READ?");
    if (strcmp(answer, "9.91E37") != 0) {
      CHECK(transfer > 20 && board_bus_fails_once > 0 && strstr(answer, WHITE) != 0);
      break;
    }
  }
}

static void test_frame_numbers(void) {
  board_begin();
  ASK("SENS:APER MIN", "");
  for (unsigned i = 1; i <= 65535; i++) {
    char wanted[8];
    snprintf(wanted, sizeof wanted, "%u,", i);
    CHECK(strncmp(board_ask(i & 1 ? "READ?" : "READ:DARK?"), wanted, strlen(wanted)) == 0);
  }
  CHECK(strncmp(board_ask("READ?"), "1,", 2) == 0);
}

void test_frame(void) {
  test_good_frames();
  test_saturation();
  test_light();
  test_broken_parts();
  test_frame_numbers();
}

/* Against strtod of the C library. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include "board.h"
#include "check.h"
#include "number.h"
#include "reply.h"

static void reads(const char *text, uint8_t decimals, enum number_unit unit, enum number_result result, int32_t value) {
  int32_t got = -7;
  enum number_result got_result = number_read(text, decimals, unit, &got);
  if (got_result != result || (result <= NUMBER_ROUNDED && got != value))
    printf("\"%s\": result %d value %d, wanted %d %d\n", text, (int)got_result, (int)got, (int)result, (int)value);
  CHECK(got_result == result);
  if (result <= NUMBER_ROUNDED) CHECK(got == value);
}

static void test_examples(void) {
  const char *const malformed[] = {"",   ".",   "+",    "-",   "e5",  "1e",   "1e+",  "1..2", "1.2.3", "--1",
                                   "0x1", "1 2", "1,2",  "NAN", "INF", "1 KG", "1ss", "1 NS", "1E1.5", "x"};
  for (unsigned i = 0; i < sizeof malformed / sizeof malformed[0]; i++) reads(malformed[i], 3, UNIT_SECOND, NUMBER_MALFORMED, 0);
  reads("64", 0, UNIT_NONE, NUMBER_OK, 64);
  reads("+064.000", 0, UNIT_NONE, NUMBER_OK, 64);
  reads(".5", 3, UNIT_NONE, NUMBER_OK, 500);
  reads("5.", 0, UNIT_NONE, NUMBER_OK, 5);
  reads("1.82E-1", 6, UNIT_SECOND, NUMBER_OK, 182000);
  reads("182 ms", 6, UNIT_SECOND, NUMBER_OK, 182000);
  reads("182000US", 6, UNIT_SECOND, NUMBER_OK, 182000);
  reads("0.182 S", 6, UNIT_SECOND, NUMBER_OK, 182000);
  reads("415 NM", 10, UNIT_METRE, NUMBER_OK, 4150);
  reads("0.415um", 10, UNIT_METRE, NUMBER_OK, 4150);
  reads("4.15E-7", 10, UNIT_METRE, NUMBER_OK, 4150);
  reads("1 M", 0, UNIT_METRE, NUMBER_OK, 1);
  reads("1 MS", 0, UNIT_METRE, NUMBER_MALFORMED, 0);
  reads("1.5", 0, UNIT_NONE, NUMBER_ROUNDED, 2);
  reads("-1.5", 0, UNIT_NONE, NUMBER_ROUNDED, -2);
  reads("1.4999", 0, UNIT_NONE, NUMBER_ROUNDED, 1);
  reads("0.0004", 0, UNIT_NONE, NUMBER_ROUNDED, 0);
  reads("1.00000000001", 0, UNIT_NONE, NUMBER_ROUNDED, 1);
  reads("1.00000000000", 0, UNIT_NONE, NUMBER_OK, 1);
  reads("1E-999999", 0, UNIT_NONE, NUMBER_ROUNDED, 0);
  reads("0E999999", 0, UNIT_NONE, NUMBER_OK, 0);
  reads("1E999999", 0, UNIT_NONE, NUMBER_TOO_LARGE, 0);
  reads("2147483647", 0, UNIT_NONE, NUMBER_OK, 2147483647);
  reads("2147483648", 0, UNIT_NONE, NUMBER_TOO_LARGE, 0);
  reads("99999999999999999999", 0, UNIT_NONE, NUMBER_TOO_LARGE, 0);
  reads("0.00000000000000000000000001E26", 0, UNIT_NONE, NUMBER_OK, 1);
}

static void test_against_strtod(void) {
  srand(1);
  for (int i = 0; i < 20000; i++) {
    char text[40];
    double size = pow(10, rand() % 9 - 4), value = (rand() / (double)RAND_MAX - 0.5) * size;
    uint8_t decimals = (uint8_t)(rand() % 4);
    int32_t got;
    snprintf(text, sizeof text, i & 1 ? "%.7g" : "%.6e", value);
    double wanted = strtod(text, 0) * pow(10, decimals);
    enum number_result result = number_read(text, decimals, UNIT_NONE, &got);
    CHECK(result <= NUMBER_ROUNDED && fabs(got - wanted) <= 0.5 + 1e-6);
  }
}

static const char *written(void (*write)(uint32_t, int8_t), uint32_t value, int8_t power) {
  reply_begin_message();
  reply_begin_unit();
  write(value, power);
  return board_answer();
}

static void write_fixed(uint32_t value, int8_t decimals) { reply_fixed(value, (uint8_t)decimals); }

static void test_writing(void) {
  board_begin();
  CHECK_TEXT(written(reply_scientific, 182090, -6), "1.8209E-1");
  CHECK_TEXT(written(reply_scientific, 29810, -2), "2.981E2");
  CHECK_TEXT(written(reply_scientific, 4150, -10), "4.15E-7");
  CHECK_TEXT(written(reply_scientific, 0, 0), "0E0");
  CHECK_TEXT(written(write_fixed, 5, 1), "0.5");
  CHECK_TEXT(written(write_fixed, 640, 1), "64");
  CHECK_TEXT(written(write_fixed, 5, 2), "0.05");
  CHECK_TEXT(written(write_fixed, 100, 2), "1");
  CHECK_TEXT(written(write_fixed, 4294967295u, 2), "42949672.95");
  for (int i = 0; i < 5000; i++) {
    uint32_t value = (uint32_t)rand() >> (rand() % 31);
    int8_t power = (int8_t)(rand() % 12 - 10);
    double wanted = value * pow(10, power);
    CHECK(fabs(strtod(written(reply_scientific, value, power), 0) - wanted) <= 1e-12 * wanted);
    CHECK(fabs(strtod(written(write_fixed, value, (int8_t)(i % 4)), 0) - value / pow(10, i % 4)) <= 1e-12 * value);
  }
}

void test_number(void) {
  test_examples();
  test_against_strtod();
  test_writing();
}

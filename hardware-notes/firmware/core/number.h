/* Decimal numbers in and out without floating point. */
#ifndef NUMBER_H
#define NUMBER_H
#include <stdbool.h>
#include <stdint.h>

enum number_unit { UNIT_NONE, UNIT_SECOND, UNIT_METRE };

enum number_result {
  NUMBER_OK,
  NUMBER_ROUNDED,  /* read, but digits were lost to rounding */
  NUMBER_TOO_LARGE, /* a number, but its magnitude does not fit */
  NUMBER_MALFORMED
};

/*
 * Reads an IEEE 488.2 NRf number, with an optional unit (S MS US; M UM NM), as value x 10^decimals rounded half away
 * from zero. `*value` is set for NUMBER_OK and NUMBER_ROUNDED only.
 */
enum number_result number_read(const char *text, uint8_t decimals, enum number_unit unit, int32_t *value);

/* Digits of an unsigned number, most significant first, into `digits` (10 bytes); returns how many (at least 1). */
uint8_t number_digits(uint32_t value, char *digits);

#endif

#include "number.h"

#define MANTISSA_LIMIT 429496728ul /* one more digit still fits 32 bits */
#define LARGEST 2147483647ul

static char upper(char c) { return (c >= 'a' && c <= 'z') ? (char)(c - 'a' + 'A') : c; }
static bool is_digit(char c) { return c >= '0' && c <= '9'; }
static bool is_space(char c) { return c == ' ' || c == '\t'; }

/* The power of ten of a unit; false if it is none of this kind. */
static bool unit_power(const char *text, enum number_unit unit, int8_t *power) {
  char a = upper(text[0]), b = a ? upper(text[1]) : 0;
  if (a == 0) return *power = 0, true;
  char base = unit == UNIT_SECOND ? 'S' : unit == UNIT_METRE ? 'M' : 0;
  if (base == 0) return false;
  if (a == base && b == 0) return *power = 0, true;
  if (b != base || text[2] != 0) return false;
  switch (a) {
    case 'M': *power = -3; return unit == UNIT_SECOND;
    case 'U': *power = -6; return true;
    case 'N': *power = -9; return unit == UNIT_METRE;
    default: return false;
  }
}

struct decimal {
  bool negative, rounded;
  uint32_t mantissa;
  int16_t power;
};

/* Sign, digits, point, digits. Returns where it ended, or 0. */
static const char *read_mantissa(const char *at, struct decimal *d) {
  bool any = false, point = false;
  if (*at == '+' || *at == '-') d->negative = *at++ == '-';
  for (; is_digit(*at) || (*at == '.' && !point); at++) {
    if (*at == '.') {
      point = true;
      continue;
    }
    any = true;
    if (d->mantissa <= MANTISSA_LIMIT) {
      d->mantissa = d->mantissa * 10 + (uint32_t)(*at - '0');
      if (point) d->power--;
    } else {
      if (*at != '0') d->rounded = true;
      if (!point) d->power++;
    }
  }
  return any ? at : 0;
}

static const char *read_exponent(const char *at, struct decimal *d) {
  int16_t exponent = 0;
  bool negative = false;
  if (upper(*at) != 'E') return at;
  at++;
  if (*at == '+' || *at == '-') negative = *at++ == '-';
  if (!is_digit(*at)) return 0;
  for (; is_digit(*at); at++)
    if (exponent < 1000) exponent = (int16_t)(exponent * 10 + (*at - '0'));
  d->power = (int16_t)(d->power + (negative ? -exponent : exponent));
  return at;
}

static enum number_result scale(struct decimal *d, int32_t *value) {
  uint8_t dropped = 0;
  for (; d->power > 0 && d->mantissa != 0; d->power--) {
    if (d->mantissa > LARGEST / 10) return NUMBER_TOO_LARGE;
    d->mantissa *= 10;
  }
  for (; d->power < 0 && (d->mantissa != 0 || dropped != 0); d->power++) {
    if (dropped != 0) d->rounded = true;
    dropped = (uint8_t)(d->mantissa % 10);
    d->mantissa /= 10;
  }
  if (dropped != 0) d->rounded = true;
  if (dropped >= 5) d->mantissa++;
  if (d->mantissa > LARGEST) return NUMBER_TOO_LARGE;
  *value = d->negative ? -(int32_t)d->mantissa : (int32_t)d->mantissa;
  return d->rounded ? NUMBER_ROUNDED : NUMBER_OK;
}

enum number_result number_read(const char *text, uint8_t decimals, enum number_unit unit, int32_t *value) {
  struct decimal d = {false, false, 0, 0};
  int8_t power;
  const char *at = read_mantissa(text, &d);
  if (at) at = read_exponent(at, &d);
  if (!at) return NUMBER_MALFORMED;
  while (is_space(*at)) at++;
  if (!unit_power(at, unit, &power)) return NUMBER_MALFORMED;
  d.power = (int16_t)(d.power + power + decimals);
  return scale(&d, value);
}

uint8_t number_digits(uint32_t value, char *digits) {
  uint8_t n = 0;
  do {
    digits[n++] = (char)('0' + value % 10);
    value /= 10;
  } while (value != 0);
  for (uint8_t i = 0; i < n / 2; i++) {
    char swap = digits[i];
    digits[i] = digits[n - 1 - i];
    digits[n - 1 - i] = swap;
  }
  return n;
}

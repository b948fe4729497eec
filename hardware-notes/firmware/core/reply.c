#include "reply.h"
#include "crc16.h"
#include "hal.h"
#include "number.h"

static bool any_sent;      /* something of this message went out */
static bool unit_open;     /* the present unit has not sent a field yet */
static uint16_t checksum_so_far;

static void put(char c) {
  checksum_so_far = crc16_add(checksum_so_far, (uint8_t)c);
  hal_send((uint8_t)c);
}

static void put_text(const FLASH char *text) {
  while (*text) put(*text++);
}

/* Before each field: ';' between units, ',' between fields. */
static void separate(void) {
  if (any_sent) put(unit_open ? ';' : ',');
  any_sent = true;
  unit_open = false;
}

void reply_begin_message(void) {
  any_sent = false;
  checksum_so_far = CRC16_START;
}

void reply_begin_unit(void) { unit_open = true; }

static void put_hexadecimal(uint16_t value) {
  for (int8_t shift = 12; shift >= 0; shift = (int8_t)(shift - 4)) {
    uint8_t nibble = (uint8_t)((value >> shift) & 15);
    put((char)(nibble < 10 ? '0' + nibble : 'A' + nibble - 10));
  }
}

void reply_end_message(bool checksum) {
  if (!any_sent) return;
  if (checksum) {
    uint16_t value = checksum_so_far;
    put_text(TEXT(",#H"));
    put_hexadecimal(value);
  }
  put('\n');
}

static void put_unsigned(uint32_t value) {
  char digits[10];
  uint8_t n = number_digits(value, digits);
  for (uint8_t i = 0; i < n; i++) put(digits[i]);
}

void reply_integer(int32_t value) {
  separate();
  if (value < 0) put('-');
  put_unsigned(value < 0 ? 0u - (uint32_t)value : (uint32_t)value);
}

void reply_fixed(uint32_t value, uint8_t decimals) {
  uint32_t one = 1;
  separate();
  while (decimals > 0 && value % 10 == 0) {
    value /= 10;
    decimals--;
  }
  for (uint8_t i = 0; i < decimals; i++) one *= 10;
  put_unsigned(value / one);
  if (decimals == 0) return;
  put('.');
  for (value %= one; one > 1; value %= one) {
    one /= 10;
    put((char)('0' + value / one));
  }
}

void reply_scientific(uint32_t value, int8_t power) {
  char digits[10];
  uint8_t n = number_digits(value, digits), last = n;
  int8_t exponent = (int8_t)(power + n - 1);
  separate();
  while (last > 1 && digits[last - 1] == '0') last--;
  put(digits[0]);
  if (last > 1) put('.');
  for (uint8_t i = 1; i < last; i++) put(digits[i]);
  put('E');
  if (exponent < 0) put('-');
  put_unsigned((uint32_t)(exponent < 0 ? -exponent : exponent));
}

void reply_text(const FLASH char *text) {
  separate();
  put_text(text);
}

void reply_quoted(const FLASH char *text) { reply_quoted_pair(text, 0); }

void reply_quoted_pair(const FLASH char *text, const FLASH char *detail) {
  separate();
  put('"');
  put_text(text);
  if (detail) {
    put(';');
    put_text(detail);
  }
  put('"');
}

void reply_not_a_number(void) { reply_text(TEXT("9.91E37")); }
void reply_over_range(void) { reply_text(TEXT("9.9E37")); }

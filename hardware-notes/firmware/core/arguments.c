#include "arguments.h"
#include "errors.h"
#include "header-match.h"

static bool is_space(char c) { return c == ' ' || c == '\t'; }

static char *skip_space(char *at) {
  while (is_space(*at)) at++;
  return at;
}

static void trim_end(char *begin, char *end) {
  while (end > begin && is_space(end[-1])) end--;
  *end = 0;
}

/* The end of a field: ',' or ';' outside of quotes, or the end of the message. */
static char *field_end(char *at) {
  char quote = 0;
  for (; *at; at++) {
    if (quote) quote = *at == quote ? 0 : quote;
    else if (*at == '"' || *at == '\'') quote = *at;
    else if (*at == ',' || *at == ';') break;
  }
  return at;
}

char *arguments_cut(char *message, const char **header, struct arguments *arguments) {
  char *at = skip_space(message);
  char ended;
  arguments->count = 0;
  if (*at == ':') at++;
  *header = at;
  while (*at && !is_space(*at) && *at != ';') at++;
  ended = *at;
  *at = 0;
  if (ended == ';') return at + 1;
  if (ended == 0) return 0;
  at = skip_space(at + 1);
  if (*at == 0) return 0;
  if (*at == ';') return at + 1;
  for (;;) {
    char *end = field_end(at);
    ended = *end;
    trim_end(at, end);
    if (arguments->count < ARGUMENTS_MOST) arguments->text[arguments->count++] = at;
    else arguments->count = ARGUMENTS_MOST + 1;
    if (ended == ';') return end + 1;
    if (ended == 0) return 0;
    at = skip_space(end + 1);
  }
}

bool arguments_number(const struct arguments *arguments, uint8_t i, uint8_t decimals, enum number_unit unit,
                      const FLASH struct number_range *range, int32_t *value) {
  const char *text = arguments->text[i];
  if (header_matches(TEXT("MINimum"), text)) return *value = range->least, true;
  if (header_matches(TEXT("MAXimum"), text)) return *value = range->most, true;
  if (header_matches(TEXT("DEFault"), text)) return *value = range->standard, true;
  enum number_result result = number_read(text, decimals, unit, value);
  if (result == NUMBER_MALFORMED) {
    errors_push(ERROR_DATA_TYPE, 0);
    return false;
  }
  if (result == NUMBER_TOO_LARGE || *value < range->least || *value > range->most) {
    errors_push(ERROR_OUT_OF_RANGE, 0);
    return false;
  }
  return true;
}

bool arguments_whole(const struct arguments *arguments, uint8_t i, const FLASH struct number_range *range, int32_t *value) {
  int32_t whole;
  if (!arguments_number(arguments, i, 0, UNIT_NONE, range, value)) return false;
  if (number_read(arguments->text[i], 0, UNIT_NONE, &whole) != NUMBER_ROUNDED) return true;
  errors_push(ERROR_OUT_OF_RANGE, 0);
  return false;
}

bool arguments_boolean(const struct arguments *arguments, bool *value) {
  const char *text = arguments->text[0];
  int32_t number;
  if (header_matches(TEXT("ON"), text)) return *value = true, true;
  if (header_matches(TEXT("OFF"), text)) return *value = false, true;
  if (number_read(text, 0, UNIT_NONE, &number) == NUMBER_MALFORMED) errors_push(ERROR_DATA_TYPE, 0);
  else if (number_read(text, 0, UNIT_NONE, &number) != NUMBER_OK || number < 0 || number > 1)
    errors_push(ERROR_OUT_OF_RANGE, 0);
  else return *value = number == 1, true;
  return false;
}

bool arguments_limit(const struct arguments *arguments, const FLASH struct number_range *range, int32_t *value) {
  if (header_matches(TEXT("MINimum"), arguments->text[0])) return *value = range->least, true;
  if (header_matches(TEXT("MAXimum"), arguments->text[0])) return *value = range->most, true;
  errors_push(ERROR_ILLEGAL_VALUE, 0);
  return false;
}

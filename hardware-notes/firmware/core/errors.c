#include "errors.h"
#include "reply.h"
#include "status.h"

struct entry {
  int16_t number;
  const FLASH char *detail;
};
static struct entry queue[ERROR_QUEUE_DEPTH];
static uint8_t first, count;

struct error_text {
  int16_t number;
  char text[24];
};
static const FLASH struct error_text texts[] = {
    {0, "No error"},
    {ERROR_SYNTAX, "Syntax error"},
    {ERROR_DATA_TYPE, "Data type error"},
    {ERROR_PARAMETER_NOT_ALLOWED, "Parameter not allowed"},
    {ERROR_MISSING_PARAMETER, "Missing parameter"},
    {ERROR_UNDEFINED_HEADER, "Undefined header"},
    {ERROR_INIT_IGNORED, "Init ignored"},
    {ERROR_OUT_OF_RANGE, "Data out of range"},
    {ERROR_ILLEGAL_VALUE, "Illegal parameter value"},
    {ERROR_STALE, "Data corrupt or stale"},
    {ERROR_HARDWARE, "Hardware error"},
    {ERROR_HARDWARE_MISSING, "Hardware missing"},
    {ERROR_QUEUE_OVERFLOW, "Queue overflow"},
    {ERROR_INPUT_OVERRUN, "Input buffer overrun"},
    {ERROR_SATURATED, "Channel saturated"},
    {ERROR_LAMP, "Lamp"},
};
#define TEXTS (sizeof texts / sizeof texts[0])

void errors_clear(void) { first = count = 0; }
uint8_t errors_count(void) { return count; }

static uint8_t event_of(int16_t number) {
  if (number <= -400) return EVENT_QUERY;
  if (number <= -300 || number > 0) return EVENT_DEVICE;
  if (number <= -200) return EVENT_EXECUTION;
  return EVENT_COMMAND;
}

void errors_push(int16_t number, const FLASH char *detail) {
  status_event(event_of(number));
  if (count == ERROR_QUEUE_DEPTH) {
    struct entry *newest = &queue[(first + count - 1) % ERROR_QUEUE_DEPTH];
    newest->number = ERROR_QUEUE_OVERFLOW;
    newest->detail = 0;
    status_event(EVENT_DEVICE);
    return;
  }
  struct entry *entry = &queue[(first + count) % ERROR_QUEUE_DEPTH];
  entry->number = number;
  entry->detail = detail;
  count++;
}

static const FLASH char *text_of(int16_t number) {
  for (uint8_t i = 0; i < TEXTS; i++)
    if (texts[i].number == number) return texts[i].text;
  return texts[0].text + 8; /* the empty text; every number pushed is in the table */
}

void errors_reply_next(void) {
  struct entry entry = {0, 0};
  if (count > 0) {
    entry = queue[first];
    first = (uint8_t)((first + 1) % ERROR_QUEUE_DEPTH);
    count--;
  }
  reply_integer(entry.number);
  reply_quoted_pair(text_of(entry.number), entry.detail);
}

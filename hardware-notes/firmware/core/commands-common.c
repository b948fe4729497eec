/* IEEE 488.2 common commands. */
#include "channel-store.h"
#include "commands.h"
#include "errors.h"
#include "frame.h"
#include "head.h"
#include "reply.h"
#include "sensor.h"
#include "settings.h"
#include "status.h"
#include "trigger.h"

#define TEST_SENSOR 1
#define TEST_LAMP 2
#define TEST_STORE 4

static const FLASH struct number_range mask_range = {0, 255, 0};

static void identify(const struct arguments *a) {
  (void)a;
  reply_text(TEXT("TINTLADDER"));
  reply_text(TEXT(HEAD_MODEL));
  reply_text(TEXT(HEAD_SERIAL));
  reply_text(TEXT(HEAD_FIRMWARE));
}

static void reset(const struct arguments *a) {
  (void)a;
  head_reset();
}

static void clear(const struct arguments *a) {
  (void)a;
  errors_clear();
  status_clear_events();
}

static void self_test(const struct arguments *a) {
  (void)a;
  reply_integer((sensor_present() ? 0 : TEST_SENSOR) + (frame_lamp_works() ? 0 : TEST_LAMP) +
                (channel_store_readable() ? 0 : TEST_STORE));
}

static void complete(const struct arguments *a) {
  (void)a;
  status_event(EVENT_COMPLETE);
}

static void complete_query(const struct arguments *a) {
  (void)a;
  reply_integer(1);
}

static void wait(const struct arguments *a) { (void)a; /* commands run in order */ }

static void event_query(const struct arguments *a) {
  (void)a;
  reply_integer(status_take_events());
}

static void set_mask(const struct arguments *a, uint8_t *mask) {
  int32_t value;
  if (arguments_whole(a, 0, &mask_range, &value)) *mask = (uint8_t)value;
}

static void event_enable(const struct arguments *a) { set_mask(a, &status_event_enable); }
static void service_enable(const struct arguments *a) {
  set_mask(a, &status_service_enable);
  status_service_enable &= (uint8_t)~64u; /* bit 6 is the summary itself */
}

static void event_enable_query(const struct arguments *a) {
  (void)a;
  reply_integer(status_event_enable);
}

static void service_enable_query(const struct arguments *a) {
  (void)a;
  reply_integer(status_service_enable);
}

static void status_byte_query(const struct arguments *a) {
  (void)a;
  reply_integer(status_byte(errors_count() > 0));
}

static const FLASH struct command list[] = {
    {"*IDN?", 0, 0, identify},      {"*OPC?", 0, 0, complete_query},
    {"*CLS", 0, 0, clear},          {"*RST", 0, 0, reset},
    {"*TST?", 0, 0, self_test},     {"*OPC", 0, 0, complete},
    {"*WAI", 0, 0, wait},           {"*ESR?", 0, 0, event_query},
    {"*ESE", 1, 1, event_enable},   {"*ESE?", 0, 0, event_enable_query},
    {"*SRE", 1, 1, service_enable}, {"*SRE?", 0, 0, service_enable_query},
    {"*STB?", 0, 0, status_byte_query},
};
COMMAND_TABLE(common_commands, list);

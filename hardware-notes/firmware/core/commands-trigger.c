/* TRIGger, INITiate, ABORt, FETCh, READ, MEASure: taking frames. */
#include "commands.h"
#include "errors.h"
#include "frame.h"
#include "header-match.h"
#include "reply.h"
#include "trigger.h"

static void source(const struct arguments *a) {
  if (header_matches(TEXT("IMMediate"), a->text[0])) trigger_source_set(false);
  else if (header_matches(TEXT("EXTernal"), a->text[0])) trigger_source_set(true);
  else errors_push(ERROR_ILLEGAL_VALUE, 0);
}

static void source_query(const struct arguments *a) {
  (void)a;
  if (trigger_source_is_button()) reply_text(TEXT("EXT"));
  else reply_text(TEXT("IMM"));
}

static void press_count(const struct arguments *a) {
  (void)a;
  reply_integer(trigger_presses());
}

static void initiate(const struct arguments *a) {
  (void)a;
  trigger_initiate();
}

static void abort_wait(const struct arguments *a) {
  (void)a;
  trigger_abort();
}

static void read_frame(bool dark) {
  trigger_abort();
  if (frame_take(dark)) frame_reply();
  else reply_not_a_number();
}

static void read_light(const struct arguments *a) {
  (void)a;
  read_frame(false);
}

static void read_dark(const struct arguments *a) {
  (void)a;
  read_frame(true);
}

static void fetch(const struct arguments *a) {
  (void)a;
  if (frame_exists()) {
    frame_reply();
    return;
  }
  errors_push(ERROR_STALE, 0);
  reply_not_a_number();
}

static void configure(const struct arguments *a) { (void)a; /* counts are the only kind of reading */ }

static void temperature(const struct arguments *a) {
  (void)a;
  uint16_t centikelvin = frame_temperature();
  if (centikelvin) reply_scientific(centikelvin, -2);
  else reply_not_a_number();
}

static const FLASH struct command list[] = {
    {"READ?", 0, 0, read_light},
    {"READ:DARK?", 0, 0, read_dark},
    {"FETCh?", 0, 0, fetch},
    {"INITiate[:IMMediate]", 0, 0, initiate},
    {"ABORt", 0, 0, abort_wait},
    {"TRIGger[:SEQuence]:SOURce", 1, 1, source},
    {"TRIGger[:SEQuence]:SOURce?", 0, 0, source_query},
    {"TRIGger[:SEQuence]:COUNt?", 0, 0, press_count},
    {"CONFigure:COUNts", 0, 0, configure},
    {"MEASure:COUNts?", 0, 0, read_light},
    {"MEASure:TEMPerature?", 0, 0, temperature},
};
COMMAND_TABLE(trigger_commands, list);

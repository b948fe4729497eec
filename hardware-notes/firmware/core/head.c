#include "head.h"
#include "channel-store.h"
#include "commands.h"
#include "errors.h"
#include "frame.h"
#include "hal.h"
#include "program-line.h"
#include "settings.h"
#include "settling.h"
#include "status.h"
#include "trigger.h"

#define TEMPERATURE_PERIOD_MS 1000u

static uint32_t temperature_at;

void head_reset(void) {
  settings_reset();
  trigger_reset();
  frame_forget();
  frame_lamp_rest();
}

void head_power_on(void) {
  status_power_on();
  errors_clear();
  program_line_reset();
  frame_power_on();
  settings_checksum = false;
  trigger_power_on();
  head_reset();
  settling_power_on();
  status_condition(&status_questionable, QUESTIONABLE_CALIBRATION, !channel_store_load());
  temperature_at = hal_millis();
}

void head_receive(uint8_t byte) {
  switch (program_line_add(byte)) {
    case LINE_COMPLETE: commands_execute(program_line()); break;
    case LINE_OVERLONG: errors_push(ERROR_INPUT_OVERRUN, 0); break;
    case LINE_SPOILT: errors_push(ERROR_SYNTAX, 0); break;
    case LINE_OPEN: break;
  }
}

void head_overrun(void) { program_line_lost(); }

void head_poll(void) {
  trigger_poll();
  if (hal_millis() - temperature_at < TEMPERATURE_PERIOD_MS) return;
  temperature_at = hal_millis();
  frame_temperature();
}

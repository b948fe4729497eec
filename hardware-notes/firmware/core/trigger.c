#include "trigger.h"
#include "errors.h"
#include "frame.h"
#include "hal.h"
#include "status.h"

#define DEBOUNCE_MS 20u

static bool by_button, waiting;
static bool was_down, steady_down; /* as last seen; as it has been for DEBOUNCE_MS */
static uint32_t changed_at;
static uint16_t presses;

static void set_waiting(bool on) {
  waiting = on;
  status_condition(&status_operation, OPERATION_WAITING, on);
}

void trigger_power_on(void) { presses = 0; }
uint16_t trigger_presses(void) { return presses; }

void trigger_reset(void) {
  by_button = false;
  set_waiting(false);
}

bool trigger_source_is_button(void) { return by_button; }
void trigger_source_set(bool button) { by_button = button; }
void trigger_abort(void) { set_waiting(false); }

/* A press that is still bouncing was begun before this moment: it is counted now and ends no wait begun now. */
static void settle_begun_press(void) {
  if (steady_down || !(was_down || hal_button_down())) return;
  steady_down = was_down = true;
  changed_at = hal_millis();
  presses++;
}

void trigger_initiate(void) {
  if (waiting) {
    errors_push(ERROR_INIT_IGNORED, 0);
    return;
  }
  frame_forget();
  if (!by_button) {
    frame_take(false);
    return;
  }
  settle_begun_press();
  set_waiting(true);
}

/* A press counts once it has been steady, and only if the button was steadily up before. */
static bool pressed(void) {
  bool down = hal_button_down();
  uint32_t now = hal_millis();
  if (down != was_down) {
    was_down = down;
    changed_at = now;
  }
  if (down == steady_down || now - changed_at < DEBOUNCE_MS) return false;
  steady_down = down;
  if (down) presses++;
  return down;
}

void trigger_poll(void) {
  if (!pressed() || !waiting) return;
  set_waiting(false);
  frame_take(false);
}

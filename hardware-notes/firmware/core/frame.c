#include "frame.h"
#include "errors.h"
#include "hal.h"
#include "reply.h"
#include "sensor.h"
#include "settings.h"
#include "settling.h"
#include "status.h"
#include "thermistor.h"

#define FLAG_DIGITAL 1u
#define FLAG_ANALOGUE 2u
#define FLAG_LAMP_OFF 4u
#define FLAG_SETTLING 8u
#define FLAG_LIGHT_CHANGED 16u

#define LAMP_SETTLE_MS 20 /* constant-current source and phosphor; a design estimate */
#define LAST_NUMBER 65535u

struct frame {
  uint8_t flags, gain_code, averages;
  uint16_t steps, centikelvin, saturated;
  bool lamp;
  uint32_t sums[SENSOR_CHANNELS];
};
static struct frame frame;
static uint16_t number;
static bool exists;

void frame_power_on(void) { number = 0; }

uint16_t frame_number(void) { return number; }

void frame_forget(void) { exists = false; }
bool frame_exists(void) { return exists; }
void frame_lamp_rest(void) { hal_lamp(settings.lamp_between_readings); }

uint16_t frame_temperature(void) {
  uint16_t now = thermistor_centikelvin(hal_thermistor_ratio());
  status_condition(&status_questionable, QUESTIONABLE_TEMPERATURE, now == 0);
  settling_poll(now);
  return now;
}

bool frame_lamp_works(void) {
  hal_lamp(true);
  hal_pause_ms(LAMP_SETTLE_MS);
  bool works = hal_lamp_current_flows();
  frame_lamp_rest();
  return works;
}

static uint16_t square_root(uint32_t value) {
  uint16_t root = 0;
  for (uint16_t bit = 0x8000; bit != 0; bit >>= 1) {
    uint16_t trial = (uint16_t)(root | bit);
    if ((uint32_t)trial * trial <= value) root = trial;
  }
  return root;
}

/*
 * The clear channel is read in both passes. They may differ by 0.3 % and by noise (four times the square root of the
 * count, a design estimate); more means that the light changed in between. Too dark to tell below 1000 counts.
 */
static bool light_changed(const struct sample *s) {
  uint16_t a = s->counts[SENSOR_CLEAR], b = s->clear_again;
  uint16_t mean = (uint16_t)(((uint32_t)a + b) / 2), difference = a > b ? (uint16_t)(a - b) : (uint16_t)(b - a);
  if (mean < 1000 || (s->saturated & (1u << SENSOR_CLEAR))) return false;
  return difference > (uint32_t)mean * 3 / 1000 + 4u * square_root(mean);
}

static bool lamp_ready(bool dark) {
  hal_lamp(!dark);
  hal_pause_ms(LAMP_SETTLE_MS);
  bool ready = dark || hal_lamp_current_flows();
  status_condition(&status_questionable, QUESTIONABLE_LAMP, !ready);
  if (!ready) errors_push(ERROR_LAMP, TEXT("no current"));
  return ready;
}

static void add_sample(const struct sample *s) {
  for (uint8_t i = 0; i < SENSOR_CHANNELS; i++) frame.sums[i] += s->counts[i];
  frame.saturated |= s->saturated;
  if (s->saturated) frame.flags |= FLAG_DIGITAL;
  if (s->analogue) frame.flags |= FLAG_ANALOGUE;
  if (light_changed(s)) frame.flags |= FLAG_LIGHT_CHANGED;
}

static bool collect(void) {
  struct sample sample;
  for (uint8_t i = 0; i < frame.averages; i++) {
    enum sensor_result result = sensor_read(frame.gain_code, frame.steps, &sample);
    if (result != SENSOR_OK) {
      errors_push(result == SENSOR_MISSING ? ERROR_HARDWARE_MISSING : ERROR_HARDWARE, TEXT("sensor"));
      return false;
    }
    add_sample(&sample);
  }
  return true;
}

static void report(void) {
  uint32_t brightest = 0, full = (uint32_t)sensor_full_scale(frame.steps) * frame.averages;
  for (uint8_t i = 0; i < SENSOR_CHANNELS; i++) {
    if (frame.saturated & (1u << i)) errors_push(ERROR_SATURATED, sensor_channels[i].name);
    if (i < SENSOR_BANDS && frame.sums[i] > brightest) brightest = frame.sums[i];
  }
  if (frame.flags & FLAG_ANALOGUE) errors_push(ERROR_SATURATED, TEXT("analogue"));
  status_condition(&status_questionable, QUESTIONABLE_SATURATED, (frame.flags & (FLAG_DIGITAL | FLAG_ANALOGUE)) != 0);
  status_condition(&status_questionable, QUESTIONABLE_LOW_SIGNAL, frame.lamp && brightest < full / 100);
  if (!frame.lamp) status_condition(&status_questionable, QUESTIONABLE_AMBIENT, brightest > full / 50);
}

bool frame_take(bool dark) {
  const struct frame empty = {0};
  exists = false;
  frame = empty;
  frame.gain_code = settings.gain_code;
  frame.steps = settings.steps;
  frame.averages = settings.averages;
  frame.lamp = !dark;
  status_condition(&status_operation, OPERATION_MEASURING, true);
  exists = lamp_ready(dark) && collect();
  frame_lamp_rest();
  status_condition(&status_operation, OPERATION_MEASURING, false);
  if (!exists) return false;
  frame.centikelvin = frame_temperature();
  if (dark) frame.flags |= FLAG_LAMP_OFF;
  if (status_operation.condition & OPERATION_SETTLING) frame.flags |= FLAG_SETTLING;
  number = number == LAST_NUMBER ? 1 : (uint16_t)(number + 1);
  report();
  return true;
}

void frame_reply(void) {
  reply_integer(number);
  reply_integer(frame.flags);
  reply_fixed(settings_gain_tenths(frame.gain_code), 1);
  reply_scientific(settings_aperture_microseconds(frame.steps), -6);
  reply_integer(frame.lamp);
  if (frame.centikelvin) reply_scientific(frame.centikelvin, -2);
  else reply_not_a_number();
  reply_integer(SENSOR_CHANNELS);
  for (uint8_t i = 0; i < SENSOR_CHANNELS; i++) {
    if (frame.saturated & (1u << i)) reply_over_range();
    else reply_fixed((frame.sums[i] * 100u + frame.averages / 2u) / frame.averages, 2);
  }
}

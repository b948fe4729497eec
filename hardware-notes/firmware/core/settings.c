#include "settings.h"
#include "sensor.h"

#define STANDARD_GAIN_CODE 7 /* 64 */
#define STANDARD_STEPS 655   /* 182 ms */
#define MICROSECONDS(steps) ((int32_t)((steps) * SENSOR_STEP_MICROSECONDS))

struct settings settings;
bool settings_checksum;

const FLASH struct number_range settings_gain_range = {500, 512000, 64000};
const FLASH struct number_range settings_aperture_range = {MICROSECONDS(SENSOR_STEPS_LEAST), MICROSECONDS(SENSOR_STEPS_MOST),
                                                           MICROSECONDS(STANDARD_STEPS)};
const FLASH struct number_range settings_average_range = {1, AVERAGES_MOST, 1};

void settings_reset(void) {
  settings.gain_code = STANDARD_GAIN_CODE;
  settings.steps = STANDARD_STEPS;
  settings.averages = 1;
  settings.lamp_between_readings = false;
}

uint16_t settings_gain_tenths(uint8_t code) { return (uint16_t)(5u << code); }

uint32_t settings_aperture_microseconds(uint16_t steps) { return steps * SENSOR_STEP_MICROSECONDS; }

uint16_t settings_steps_of(uint32_t microseconds) {
  return (uint16_t)((microseconds + SENSOR_STEP_MICROSECONDS / 2) / SENSOR_STEP_MICROSECONDS);
}

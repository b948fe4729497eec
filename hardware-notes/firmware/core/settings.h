/* What a frame is taken with. */
#ifndef SETTINGS_H
#define SETTINGS_H
#include <stdbool.h>
#include <stdint.h>
#include "arguments.h"

struct settings {
  uint8_t gain_code;
  uint16_t steps; /* aperture, steps of the sensor */
  uint8_t averages;
  bool lamp_between_readings;
};
extern struct settings settings;
extern bool settings_checksum; /* survives *RST */

#define AVERAGES_MOST 64
#define GAIN_DECIMALS 3
extern const FLASH struct number_range settings_gain_range, settings_aperture_range, settings_average_range;

void settings_reset(void);
/* Gain x 10, exact for every code. */
uint16_t settings_gain_tenths(uint8_t code);
uint32_t settings_aperture_microseconds(uint16_t steps);
uint16_t settings_steps_of(uint32_t microseconds);

#endif

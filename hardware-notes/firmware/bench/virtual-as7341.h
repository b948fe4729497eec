/*
 * A model of the AS7341-class sensor at its two-wire bus: registers, photodiode map, conversion time, saturation and
 * noise, so that the firmware's own sensor driver runs in both simulators. It models what the chip's public
 * documentation says, not the silicon. Bench only.
 */
#ifndef VIRTUAL_AS7341_H
#define VIRTUAL_AS7341_H
#include <stdbool.h>
#include <stdint.h>

#define VIRTUAL_CHANNELS 10 /* F1..F8, clear, near infrared */
#define VIRTUAL_ADDRESS 0x39

struct virtual_sensor {
  /* What falls on it, counts per ms at gain 1: from the lamp while it is on, and always. */
  double lit[VIRTUAL_CHANNELS], ambient[VIRTUAL_CHANNELS];
  double noise;   /* standard deviation of a count is noise x sqrt(count) */
  double flicker; /* every second conversion sees the light times 1 + flicker */
  bool lamp, absent, analogue_saturated, saturate_once;
  bool stuck; /* conversions never end */
  uint64_t now_us; /* set by the bench before each access */
  /* inside */
  uint8_t registers[256], smux[20], pointer;
  bool pointer_expected, converting, odd;
  uint64_t smux_until, converting_until;
  uint64_t random;
};

void virtual_sensor_power_on(struct virtual_sensor *sensor, uint64_t seed);
/* A START with this chip's address; false: no acknowledge. */
bool virtual_sensor_start(struct virtual_sensor *sensor, bool writing);
void virtual_sensor_write(struct virtual_sensor *sensor, uint8_t byte);
uint8_t virtual_sensor_read(struct virtual_sensor *sensor);

#endif

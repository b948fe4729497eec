/*
 * What the core asks of a sensor driver. sensor-as7341.c is one; another sensor is another file with these names.
 */
#ifndef SENSOR_H
#define SENSOR_H
#include <stdbool.h>
#include <stdint.h>
#include "flash.h"

#define SENSOR_CHANNELS 10
/* Channels 0 to this - 1 are spectral bands; the rest is clear and near infrared. */
#define SENSOR_BANDS 8
#define SENSOR_CLEAR 8
#define SENSOR_PASSES 2
/* Gains 0.5, 1, 2, ... 512 as codes 0..10: gain = 2^(code - 1). */
#define SENSOR_GAIN_CODES 11
/* The aperture is a whole number of these steps of 278 us. */
#define SENSOR_STEP_MICROSECONDS 278ul
#define SENSOR_STEPS_LEAST 18
#define SENSOR_STEPS_MOST 3597

struct channel {
  char name[6];
  uint16_t centre; /* 0.1 nm, 0: the channel has no centre */
  uint16_t width;  /* full width at half maximum, 0.1 nm */
};
/* Nominal values of the chip's catalogue. */
extern const FLASH struct channel sensor_channels[SENSOR_CHANNELS];

enum sensor_result { SENSOR_OK, SENSOR_MISSING, SENSOR_FAILED };

struct sample {
  uint16_t counts[SENSOR_CHANNELS];
  uint16_t clear_again; /* the clear channel in the second pass */
  uint16_t saturated;   /* bit i: channel i at full scale */
  bool analogue;        /* the chip saw saturation before its converter; which channel is not known */
};

bool sensor_present(void);
/* Full scale of a channel, counts. */
uint16_t sensor_full_scale(uint16_t steps);
/* Takes both passes; returns when done. */
enum sensor_result sensor_read(uint8_t gain_code, uint16_t steps, struct sample *sample);

#endif

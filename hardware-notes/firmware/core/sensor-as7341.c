/*
 * A spectral sensor of the AS7341 class: 8 bands, clear and near infrared behind six converters, in two passes.
 * Registers from the chip's public documentation and driver sources; the photodiode map ("SMUX") from its
 * application note. It ran against a model of the chip (bench/virtual-as7341.c), not against a chip.
 */
#include "hal.h"
#include "sensor.h"

#define ADDRESS 0x39
#define REG_SMUX 0x00
#define REG_ENABLE 0x80
#define REG_ATIME 0x81
#define REG_ID 0x92
#define REG_ASTATUS 0x94
#define REG_STATUS2 0xA3
#define REG_CFG1 0xAA
#define REG_CFG6 0xAF
#define REG_ASTEP 0xCA
#define ENABLE_POWER 0x01u
#define ENABLE_MEASURE 0x02u
#define ENABLE_SMUX 0x10u
#define STATUS2_VALID 0x40u
#define STATUS2_ANALOGUE 0x08u
#define CFG6_WRITE_SMUX 0x10u
#define ID_VALUE 0x24u
#define ID_MASK 0xFCu

#define CYCLES 100u /* ATIME + 1: a step of the aperture is CYCLES x 2.78 us */
#define CONVERTERS 6
#define SMUX_BYTES 20
#define ASTATUS_BYTES (1 + 2 * CONVERTERS)

const FLASH struct channel sensor_channels[SENSOR_CHANNELS] = {
    {"F1", 4150, 260}, {"F2", 4450, 300}, {"F3", 4800, 360}, {"F4", 5150, 390}, {"F5", 5550, 390},
    {"F6", 5900, 400}, {"F7", 6300, 500}, {"F8", 6800, 520}, {"CLEAR", 0, 0},   {"NIR", 9100, 1000},
};

struct photodiode {
  uint8_t pin, converter;
};
#define PASS_PINS 11
static const FLASH struct photodiode passes[SENSOR_PASSES][PASS_PINS] = {
    {{2, 0}, {32, 0}, {10, 1}, {25, 1}, {1, 2}, {31, 2}, {11, 3}, {26, 3}, {17, 4}, {35, 4}, {38, 5}},
    {{13, 0}, {19, 0}, {8, 1}, {29, 1}, {14, 2}, {20, 2}, {7, 3}, {28, 3}, {17, 4}, {35, 4}, {38, 5}},
};

static bool write_register(uint8_t reg, uint8_t value) { return hal_bus_write(ADDRESS, reg, &value, 1); }

bool sensor_present(void) {
  uint8_t id;
  return hal_bus_read(ADDRESS, REG_ID, &id, 1) && (id & ID_MASK) == ID_VALUE;
}

uint16_t sensor_full_scale(uint16_t steps) {
  return steps >= 656 ? 65535u : (uint16_t)(steps * CYCLES);
}

/* Polls a register until (value & mask) == wanted. */
static bool wait_for(uint8_t reg, uint8_t mask, uint8_t wanted, uint16_t most_ms, uint8_t *value) {
  uint32_t start = hal_millis();
  do {
    if (!hal_bus_read(ADDRESS, reg, value, 1)) return false;
    if ((*value & mask) == wanted) return true;
    hal_pause_ms(1);
  } while (hal_millis() - start <= most_ms);
  return false;
}

static bool connect_photodiodes(uint8_t pass) {
  uint8_t bytes[SMUX_BYTES] = {0}, enable;
  for (uint8_t i = 0; i < PASS_PINS; i++) {
    uint8_t pin = passes[pass][i].pin, nibble = (uint8_t)(passes[pass][i].converter + 1);
    bytes[pin / 2] |= (uint8_t)((pin & 1) ? nibble << 4 : nibble);
  }
  return write_register(REG_ENABLE, ENABLE_POWER) && write_register(REG_CFG6, CFG6_WRITE_SMUX) &&
         hal_bus_write(ADDRESS, REG_SMUX, bytes, SMUX_BYTES) &&
         write_register(REG_ENABLE, ENABLE_POWER | ENABLE_SMUX) &&
         wait_for(REG_ENABLE, ENABLE_SMUX, 0, 20, &enable);
}

static bool run_pass(uint8_t pass, uint8_t gain_code, uint16_t steps, uint16_t *words, bool *analogue) {
  uint16_t astep = (uint16_t)(steps - 1), pass_ms = (uint16_t)(steps * SENSOR_STEP_MICROSECONDS / 1000u);
  uint8_t step_bytes[2] = {(uint8_t)astep, (uint8_t)(astep >> 8)}, bytes[ASTATUS_BYTES], status;
  if (!connect_photodiodes(pass) || !write_register(REG_ATIME, CYCLES - 1) ||
      !hal_bus_write(ADDRESS, REG_ASTEP, step_bytes, 2) || !write_register(REG_CFG1, gain_code) ||
      !write_register(REG_ENABLE, ENABLE_POWER | ENABLE_MEASURE))
    return false;
  /* The chip's oscillator may be slow by some per cent, and its "valid" bit may still be that of the pass before. */
  hal_pause_ms((uint16_t)(pass_ms + pass_ms / 32 + 2));
  if (!wait_for(REG_STATUS2, STATUS2_VALID, STATUS2_VALID, (uint16_t)(100 + pass_ms / 8), &status)) return false;
  if (status & STATUS2_ANALOGUE) *analogue = true;
  if (!hal_bus_read(ADDRESS, REG_ASTATUS, bytes, ASTATUS_BYTES)) return false;
  for (uint8_t i = 0; i < CONVERTERS; i++)
    words[i] = (uint16_t)(bytes[1 + 2 * i] | ((uint16_t)bytes[2 + 2 * i] << 8));
  return write_register(REG_ENABLE, ENABLE_POWER);
}

enum sensor_result sensor_read(uint8_t gain_code, uint16_t steps, struct sample *sample) {
  uint16_t first[CONVERTERS], second[CONVERTERS], full = sensor_full_scale(steps);
  if (!sensor_present()) return SENSOR_MISSING;
  sample->analogue = false;
  sample->saturated = 0;
  if (!run_pass(0, gain_code, steps, first, &sample->analogue) ||
      !run_pass(1, gain_code, steps, second, &sample->analogue))
    return SENSOR_FAILED;
  for (uint8_t i = 0; i < 4; i++) {
    sample->counts[i] = first[i];
    sample->counts[4 + i] = second[i];
  }
  sample->counts[SENSOR_CLEAR] = first[4];
  sample->clear_again = second[4];
  sample->counts[9] = first[5];
  for (uint8_t i = 0; i < SENSOR_CHANNELS; i++)
    if (sample->counts[i] >= full) sample->saturated |= (uint16_t)(1u << i);
  if (sample->clear_again >= full) sample->saturated |= 1u << SENSOR_CLEAR;
  return SENSOR_OK;
}

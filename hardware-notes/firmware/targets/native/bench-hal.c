#include "bench-hal.h"
#include <stdio.h>
#include <string.h>
#include <time.h>
#include "fault-output.h"
#include "hal.h"

struct scene scene;
bool bench_fast;
static uint64_t jumped_us;
static uint8_t store[STORE_BYTES];
static const char *store_path;

void bench_hal_begin(const char *store_file) {
  memset(store, 0xFF, sizeof store);
  store_path = store_file;
  FILE *f = store_file ? fopen(store_file, "rb") : 0;
  if (!f) return;
  if (fread(store, 1, sizeof store, f) != sizeof store) fprintf(stderr, "head-sim: %s is shorter than a store\n", store_file);
  fclose(f);
}

static uint64_t real_us(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return (uint64_t)t.tv_sec * 1000000u + (uint64_t)t.tv_nsec / 1000u;
}

uint64_t bench_microseconds(void) { return real_us() + jumped_us; }
uint64_t bench_real_milliseconds(void) { return real_us() / 1000; }
uint32_t hal_millis(void) { return (uint32_t)(bench_microseconds() / 1000); }

void hal_pause_ms(uint16_t ms) {
  struct timespec t = {ms / 1000, (ms % 1000) * 1000000l};
  if (bench_fast) jumped_us += ms * 1000u;
  else nanosleep(&t, 0);
}

void hal_send(uint8_t byte) { fault_output_add(byte); }

bool hal_bus_write(uint8_t address, uint8_t reg, const uint8_t *bytes, uint8_t count) {
  scene.sensor.now_us = bench_microseconds();
  if (address != VIRTUAL_ADDRESS || !virtual_sensor_start(&scene.sensor, true)) return false;
  virtual_sensor_write(&scene.sensor, reg);
  for (uint8_t i = 0; i < count; i++) virtual_sensor_write(&scene.sensor, bytes[i]);
  return true;
}

bool hal_bus_read(uint8_t address, uint8_t reg, uint8_t *bytes, uint8_t count) {
  if (!hal_bus_write(address, reg, 0, 0) || !virtual_sensor_start(&scene.sensor, false)) return false;
  for (uint8_t i = 0; i < count; i++) bytes[i] = virtual_sensor_read(&scene.sensor);
  return true;
}

void hal_lamp(bool on) { scene.sensor.lamp = on && !scene.lamp_broken; }
bool hal_lamp_current_flows(void) { return scene.sensor.lamp; }
uint16_t hal_thermistor_ratio(void) { return scene_thermistor_ratio(&scene); }
bool hal_button_down(void) { return bench_microseconds() / 1000 < scene.button_until_ms; }
uint8_t hal_store_read(uint8_t at) { return store[at % STORE_BYTES]; }

void hal_store_write(uint8_t at, uint8_t byte) {
  store[at % STORE_BYTES] = byte;
  FILE *f = store_path ? fopen(store_path, "wb") : 0;
  if (!f) return;
  fwrite(store, 1, sizeof store, f);
  fclose(f);
}

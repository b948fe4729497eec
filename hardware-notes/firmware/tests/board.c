#include "board.h"
#include <string.h>
#include "check.h"
#include "hal.h"
#include "head.h"

struct virtual_sensor board_sensor;
bool board_lamp_broken, board_button;
uint16_t board_thermistor;
uint8_t board_store[STORE_BYTES];
int board_store_writes_left, board_bus_transfers_left, board_bus_fails_once;
static uint64_t clock_us;
static char answer[65536];
static size_t answered;

void board_power_cycle(void) {
  board_store_writes_left = board_bus_transfers_left = -1;
  board_bus_fails_once = 0;
  virtual_sensor_power_on(&board_sensor, 1);
  answered = 0;
  head_power_on();
}

void board_begin(void) {
  static const double white[VIRTUAL_CHANNELS] = {1, 1.5, 2, 2.5, 3, 3.5, 3, 2, 5, 1};
  memset(&board_sensor, 0, sizeof board_sensor);
  memcpy(board_sensor.lit, white, sizeof white);
  memset(board_store, 0xFF, sizeof board_store);
  board_lamp_broken = board_button = false;
  board_thermistor = 512; /* 25 degC */
  board_power_cycle();
}

void board_send_bytes(const uint8_t *bytes, size_t n) {
  for (size_t i = 0; i < n; i++) head_receive(bytes[i]);
}

void board_send(const char *text) { board_send_bytes((const uint8_t *)text, strlen(text)); }

const char *board_answer(void) {
  answer[answered] = 0;
  answered = 0;
  return answer;
}

const char *board_ask(const char *message) {
  board_send(message);
  board_send("\n");
  if (answered > 0 && answer[answered - 1] == '\n') answered--;
  return board_answer();
}

void board_let_pass(uint32_t ms) {
  for (uint32_t i = 0; i < ms; i++) {
    head_poll();
    clock_us += 1000;
  }
  head_poll();
}

uint32_t hal_millis(void) { return (uint32_t)(clock_us / 1000); }
void hal_pause_ms(uint16_t ms) { clock_us += ms * 1000u; }
void hal_send(uint8_t byte) {
  if (answered < sizeof answer - 1) answer[answered++] = (char)byte;
}

static bool acknowledged(void) {
  if (board_bus_fails_once > 0 && --board_bus_fails_once == 0) return false;
  if (board_bus_transfers_left > 0) board_bus_transfers_left--;
  return board_bus_transfers_left != 0;
}

bool hal_bus_write(uint8_t address, uint8_t reg, const uint8_t *bytes, uint8_t count) {
  clock_us += 50;
  board_sensor.now_us = clock_us;
  if (address != VIRTUAL_ADDRESS || !acknowledged() || !virtual_sensor_start(&board_sensor, true)) return false;
  virtual_sensor_write(&board_sensor, reg);
  for (uint8_t i = 0; i < count; i++) virtual_sensor_write(&board_sensor, bytes[i]);
  return true;
}

bool hal_bus_read(uint8_t address, uint8_t reg, uint8_t *bytes, uint8_t count) {
  if (!hal_bus_write(address, reg, 0, 0) || !virtual_sensor_start(&board_sensor, false)) return false;
  for (uint8_t i = 0; i < count; i++) bytes[i] = virtual_sensor_read(&board_sensor);
  return true;
}

void hal_lamp(bool on) { board_sensor.lamp = on && !board_lamp_broken; }
bool hal_lamp_current_flows(void) { return board_sensor.lamp; }
uint16_t hal_thermistor_ratio(void) { return board_thermistor; }
bool hal_button_down(void) { return board_button; }

uint8_t hal_store_read(uint8_t at) {
  CHECK(at < STORE_BYTES);
  return board_store[at % STORE_BYTES];
}

void hal_store_write(uint8_t at, uint8_t byte) {
  CHECK(at < STORE_BYTES);
  if (board_store_writes_left == 0) return;
  if (board_store_writes_left > 0) board_store_writes_left--;
  board_store[at % STORE_BYTES] = byte;
}

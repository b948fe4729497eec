#include "virtual-as7341.h"
#include <math.h>
#include <string.h>

enum { ENABLE = 0x80, ATIME = 0x81, ID = 0x92, ASTATUS = 0x94, DATA = 0x95, STATUS2 = 0xA3, CFG1 = 0xAA, CFG6 = 0xAF, ASTEP = 0xCA };
enum { POWER = 1, MEASURE = 2, SMUX = 16 };
#define STEP_US 2.78
#define SMUX_US 200

/* Light of a photodiode pin: channel, and how many pins share it. */
static const struct { uint8_t pin, channel, pins; } photodiodes[] = {
    {2, 0, 2},  {32, 0, 2}, {10, 1, 2}, {25, 1, 2}, {1, 2, 2},  {31, 2, 2}, {11, 3, 2}, {26, 3, 2}, {13, 4, 2}, {19, 4, 2},
    {8, 5, 2},  {29, 5, 2}, {14, 6, 2}, {20, 6, 2}, {7, 7, 2},  {28, 7, 2}, {17, 8, 2}, {35, 8, 2}, {38, 9, 1},
};

void virtual_sensor_power_on(struct virtual_sensor *s, uint64_t seed) {
  memset(s->registers, 0, sizeof s->registers);
  memset(s->smux, 0, sizeof s->smux);
  s->registers[ID] = 0x24;
  s->pointer = 0;
  s->pointer_expected = s->converting = s->odd = false;
  s->smux_until = s->converting_until = 0;
  s->random = seed * 2654435769u + 88172645463325252u;
}

static double uniform(struct virtual_sensor *s) { /* xorshift64 */
  s->random ^= s->random << 13;
  s->random ^= s->random >> 7;
  s->random ^= s->random << 17;
  return ((double)(s->random >> 11) + 0.5) / 9007199254740992.0;
}

static double gauss(struct virtual_sensor *s) { /* Box and Muller */
  double a = uniform(s), b = uniform(s);
  return sqrt(-2 * log(a)) * cos(6.283185307179586 * b);
}

static double steps(const struct virtual_sensor *s) {
  return (s->registers[ATIME] + 1.0) * (s->registers[ASTEP] + 256.0 * s->registers[ASTEP + 1] + 1.0);
}

static double gain(const struct virtual_sensor *s) { return ldexp(1, (s->registers[CFG1] & 0x1F) - 1); }

static double light_on_converter(const struct virtual_sensor *s, uint8_t converter) {
  double sum = 0;
  for (unsigned i = 0; i < sizeof photodiodes / sizeof photodiodes[0]; i++) {
    uint8_t pin = photodiodes[i].pin, c = photodiodes[i].channel;
    uint8_t nibble = (pin & 1) ? s->smux[pin / 2] >> 4 : s->smux[pin / 2] & 15;
    if (nibble == converter + 1) sum += (s->ambient[c] + (s->lamp ? s->lit[c] : 0)) / photodiodes[i].pins;
  }
  return sum * (s->odd ? 1 + s->flicker : 1);
}

static void convert(struct virtual_sensor *s) {
  double full = fmin(65535, steps(s)), ms = steps(s) * STEP_US / 1000;
  uint8_t status = 0x40;
  for (uint8_t i = 0; i < 6; i++) {
    double count = light_on_converter(s, i) * gain(s) * ms;
    if (s->noise > 0) count += s->noise * sqrt(count > 0 ? count : 0) * gauss(s);
    count = floor(count + 0.5);
    if (count < 0) count = 0;
    if (s->saturate_once && i == 2 && s->odd) count = full;
    if (count >= full) count = full, status |= 0x10;
    s->registers[DATA + 2 * i] = (uint8_t)((unsigned)count & 255);
    s->registers[DATA + 2 * i + 1] = (uint8_t)((unsigned)count >> 8);
  }
  if (s->odd) s->saturate_once = false;
  if (s->analogue_saturated) status |= 0x08;
  s->odd = !s->odd;
  s->registers[STATUS2] = status;
  s->registers[ASTATUS] = (uint8_t)((status & 0x18 ? 0x80 : 0) | (s->registers[CFG1] & 15));
}

static void catch_up(struct virtual_sensor *s) {
  if (s->smux_until && s->now_us >= s->smux_until) {
    s->registers[ENABLE] &= (uint8_t)~SMUX;
    s->smux_until = 0;
  }
  if (s->converting && !s->stuck && s->now_us >= s->converting_until) {
    s->converting = false; /* the firmware takes one conversion at a time */
    convert(s);
  }
}

bool virtual_sensor_start(struct virtual_sensor *s, bool writing) {
  catch_up(s);
  s->pointer_expected = writing;
  return !s->absent;
}

static void write_enable(struct virtual_sensor *s, uint8_t value) {
  bool was = (s->registers[ENABLE] & MEASURE) != 0, is = (value & POWER) && (value & MEASURE);
  s->registers[ENABLE] = value;
  if (value & SMUX) s->smux_until = s->now_us + SMUX_US;
  if (!is) s->converting = false;
  if (is && !was) {
    s->registers[STATUS2] = 0;
    s->converting = true;
    s->converting_until = s->now_us + (uint64_t)(steps(s) * STEP_US);
  }
}

void virtual_sensor_write(struct virtual_sensor *s, uint8_t byte) {
  if (s->pointer_expected) {
    s->pointer = byte;
    s->pointer_expected = false;
    return;
  }
  uint8_t reg = s->pointer++;
  if (reg < sizeof s->smux && (s->registers[CFG6] & 0x18) == 0x10) s->smux[reg] = byte;
  else if (reg == ENABLE) write_enable(s, byte);
  else if (reg != ID && reg != STATUS2 && !(reg >= ASTATUS && reg < DATA + 12)) s->registers[reg] = byte;
}

uint8_t virtual_sensor_read(struct virtual_sensor *s) {
  catch_up(s);
  return s->registers[s->pointer++];
}

#include "bench-words.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

void scene_standard(struct scene *scene, uint64_t seed) {
  static const double white[VIRTUAL_CHANNELS] = {1, 1.5, 2, 2.5, 3, 3.5, 3, 2, 5, 1};
  memset(scene, 0, sizeof *scene);
  for (int i = 0; i < VIRTUAL_CHANNELS; i++) {
    scene->sensor.lit[i] = white[i];
    scene->sensor.ambient[i] = 0.0008;
  }
  scene->sensor.noise = 0.5;
  scene->kelvin = 298.1;
  scene->seed = seed;
  virtual_sensor_power_on(&scene->sensor, seed);
}

uint16_t scene_thermistor_ratio(const struct scene *scene) {
  if (scene->thermistor_open) return 1023;
  double ohm = 10e3 * exp(3950 * (1 / scene->kelvin - 1 / 298.15));
  return (uint16_t)(1024 * ohm / (ohm + 10e3));
}

static struct bench_command split(const char *text) {
  struct bench_command c = {WORD_UNKNOWN, "", {0}, 0};
  char copy[256], *save = 0;
  snprintf(copy, sizeof copy, "%s", text);
  char *part = strtok_r(copy, " ,\t\r\n", &save);
  if (!part) return c;
  snprintf(c.name, sizeof c.name, "%.15s", part);
  while ((part = strtok_r(0, " ,\t\r\n", &save)) && c.count < VIRTUAL_CHANNELS) {
    char *end;
    double value = strtod(part, &end);
    if (end != part && *end == 0) c.values[c.count++] = value;
    else if (c.count == 0) snprintf(c.name, sizeof c.name, "%.15s", part); /* "fault cut 12": name is cut */
  }
  return c;
}

static bool ten(struct bench_command *c, double *into) {
  if (c->count != VIRTUAL_CHANNELS) return false;
  memcpy(into, c->values, sizeof c->values);
  return true;
}

/* Words that change the scene; false when it is none of them. */
static bool change_scene(struct scene *scene, struct bench_command *c, const char *word) {
  struct virtual_sensor *s = &scene->sensor;
  bool on = c->count == 1 && c->values[0] != 0, one = c->count == 1;
  if (!strcasecmp(word, "light")) return ten(c, s->lit);
  if (!strcasecmp(word, "ambient")) return ten(c, s->ambient);
  if (!one) return false;
  if (!strcasecmp(word, "noise")) s->noise = c->values[0];
  else if (!strcasecmp(word, "flicker")) s->flicker = c->values[0];
  else if (!strcasecmp(word, "nack")) s->absent = on;
  else if (!strcasecmp(word, "analogue")) s->analogue_saturated = on;
  else if (!strcasecmp(word, "stuck")) s->stuck = on;
  else if (!strcasecmp(word, "kelvin")) scene->kelvin = c->values[0];
  else if (!strcasecmp(word, "lampbroken")) scene->lamp_broken = on;
  else if (!strcasecmp(word, "ntcopen")) scene->thermistor_open = on;
  else if (!strcasecmp(word, "seed")) virtual_sensor_power_on(s, scene->seed = (uint64_t)c->values[0]);
  else return false;
  return true;
}

static bool begins_with(const char *text, const char *word) {
  size_t n = strlen(word);
  return !strncasecmp(text, word, n) && (text[n] == 0 || strchr(" ,\t\r\n", text[n]));
}

struct bench_command bench_word_obey(struct scene *scene, const char *text) {
  static const struct { const char *word; enum bench_word meaning; } others[] = {
      {"button", WORD_BUTTON}, {"fault", WORD_FAULT}, {"unplug", WORD_UNPLUG}, {"replug", WORD_REPLUG},
      {"reset", WORD_RESET},   {"boot", WORD_BOOT},   {"quit", WORD_QUIT},
  };
  while (*text == ' ') text++;
  struct bench_command c = split(text);
  for (size_t i = 0; i < sizeof others / sizeof others[0]; i++)
    if (begins_with(text, others[i].word)) {
      c.word = others[i].meaning;
      return c;
    }
  if (change_scene(scene, &c, c.name)) c.word = WORD_DONE;
  return c;
}

/* The words by which a bench sets the scene of a simulated head; the same for both simulators. Bench only. */
#ifndef BENCH_WORDS_H
#define BENCH_WORDS_H
#include <stdbool.h>
#include <stdint.h>
#include "virtual-as7341.h"

struct scene {
  struct virtual_sensor sensor;
  double kelvin;
  bool lamp_broken, thermistor_open;
  uint64_t seed;
  uint64_t button_until_ms; /* the button is down until then */
};

enum bench_word {
  WORD_UNKNOWN, /* not a bench word, or its values are not what it needs */
  WORD_DONE,    /* the scene was changed */
  WORD_BUTTON,  /* values[0]: ms */
  WORD_FAULT,   /* name, values[0] */
  WORD_UNPLUG,  /* values[0]: ms until plugged in again, 0: stays out */
  WORD_REPLUG,
  WORD_RESET,
  WORD_BOOT, /* values[0]: ms of deafness after a reset */
  WORD_QUIT
};

struct bench_command {
  enum bench_word word;
  char name[16];
  double values[VIRTUAL_CHANNELS];
  int count;
};

/* A white tile under the lamp, room light kept out, a little noise: what both simulators start with. */
void scene_standard(struct scene *scene, uint64_t seed);
/* `text`: a word, then values separated by spaces or commas. Changes the scene where the word is about the scene. */
struct bench_command bench_word_obey(struct scene *scene, const char *text);
/* The thermistor divider's reading for the scene, 0..1023 (the formula of core/thermistor.c). */
uint16_t scene_thermistor_ratio(const struct scene *scene);

#endif

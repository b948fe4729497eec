/* The parameters of one program unit. */
#ifndef ARGUMENTS_H
#define ARGUMENTS_H
#include <stdbool.h>
#include <stdint.h>
#include "flash.h"
#include "number.h"

#define ARGUMENTS_MOST 3

struct arguments {
  uint8_t count; /* ARGUMENTS_MOST + 1 when there were more */
  const char *text[ARGUMENTS_MOST];
};

/*
 * Cuts the next unit out of a program message in place: its header, then its parameters. Returns where the following
 * unit begins, or null after the last one. An empty unit gives an empty header.
 */
char *arguments_cut(char *message, const char **header, struct arguments *arguments);

struct number_range {
  int32_t least, most, standard; /* in units of 10^-decimals */
};
/* Reads argument `i` as a number or MIN, MAX, DEF; queues -104 or -222 and returns false where it is not one. */
bool arguments_number(const struct arguments *arguments, uint8_t i, uint8_t decimals, enum number_unit unit,
                      const FLASH struct number_range *range, int32_t *value);
/* The same for whole numbers: 1.5 is out of range. */
bool arguments_whole(const struct arguments *arguments, uint8_t i, const FLASH struct number_range *range, int32_t *value);
bool arguments_boolean(const struct arguments *arguments, bool *value);
/* `MIN` or `MAX` after a query: sets `*value` and returns true; -224 otherwise. */
bool arguments_limit(const struct arguments *arguments, const FLASH struct number_range *range, int32_t *value);

#endif

/* The board of the simulated head: its scene, its clock and its wires. */
#ifndef BENCH_HAL_H
#define BENCH_HAL_H
#include <stdbool.h>
#include <stdint.h>
#include "bench-words.h"

extern struct scene scene;
/* Waiting costs no time: the board's clock jumps instead. */
extern bool bench_fast;
void bench_hal_begin(const char *store_file);
uint64_t bench_microseconds(void);
uint64_t bench_real_milliseconds(void);

#endif

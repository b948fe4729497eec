/* The bytes on their way to the host, and the faults of a bad line: one fault, applied to the next response. */
#ifndef FAULT_OUTPUT_H
#define FAULT_OUTPUT_H
#include <stdbool.h>
#include <stdint.h>

void fault_output_reset(uint64_t seed);
/* cut [k] dup flip [bit] silent flood [n] slow [ms] drop [k] glue unplug [k]; false: no such fault. */
bool fault_output_arm(const char *name, int count, double value);
void fault_output_add(uint8_t byte);
/* Writes what may be written now to `fd`. Returns false once, when an `unplug` fault says to pull the cable. */
bool fault_output_flush(int fd, uint64_t now_ms);
bool fault_output_pending(void);
void fault_output_forget(void);

#endif

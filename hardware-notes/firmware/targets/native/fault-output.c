#include "fault-output.h"
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <unistd.h>

enum fault { NONE, CUT, DUP, FLIP, SILENT, FLOOD, SLOW, DROP, GLUE, UNPLUG };
static const char *const names[] = {"none", "cut", "dup", "flip", "silent", "flood", "slow", "drop", "glue", "unplug"};
#define LIMIT 131072

static uint8_t response[8192], queue[LIMIT];
static unsigned used, begin, end, byte_ms, pull_at;
static bool pull_armed;
static uint64_t next_at;
static enum fault armed;
static int argument_count;
static double argument;
static uint64_t random_state;

void fault_output_reset(uint64_t seed) {
  random_state = seed * 6364136223846793005u + 1442695040888963407u;
  armed = NONE;
  fault_output_forget();
}

void fault_output_forget(void) {
  used = begin = end = byte_ms = 0;
  pull_armed = false;
}

static unsigned random_below(unsigned n) {
  random_state = random_state * 6364136223846793005u + 1442695040888963407u;
  return (unsigned)((random_state >> 33) % n);
}

bool fault_output_arm(const char *name, int count, double value) {
  for (unsigned i = 0; i < sizeof names / sizeof names[0]; i++)
    if (!strcasecmp(name, names[i])) {
      armed = (enum fault)i;
      argument_count = count;
      argument = value;
      return true;
    }
  return false;
}

static void enqueue(const uint8_t *bytes, unsigned n) {
  if (end + n > LIMIT) return;
  memcpy(queue + end, bytes, n);
  end += n;
}

/* The fault's own number if one was given, else a random one, below n. */
static unsigned chosen(unsigned n) {
  unsigned value = argument_count > 0 && argument >= 0 ? (unsigned)argument : random_below(n);
  return value < n ? value : n - 1;
}

static void flip_bit(void) {
  unsigned bit = chosen((used - 1) * 8); /* not in the LF */
  response[bit / 8] ^= (uint8_t)(1u << (bit % 8));
}

static void flood(void) {
  unsigned n = argument_count > 0 ? (unsigned)argument : 16384;
  for (unsigned i = 0; i < n && end < LIMIT; i++) queue[end++] = 'A';
}

static void send_response(void) {
  enum fault fault = armed;
  unsigned at;
  armed = NONE;
  switch (fault) {
    case CUT: enqueue(response, argument_count > 0 ? chosen(used) : used / 2); break;
    case DUP: enqueue(response, used); enqueue(response, used); break;
    case FLIP: flip_bit(); enqueue(response, used); break;
    case SILENT: break;
    case FLOOD: flood(); break;
    case SLOW: byte_ms = argument_count > 0 ? (unsigned)argument : 5; enqueue(response, used); break;
    case DROP: at = chosen(used - 1); enqueue(response, at); enqueue(response + at + 1, used - at - 1); break;
    case GLUE: enqueue(response, used - 1); break;
    case UNPLUG: pull_at = end + chosen(used); pull_armed = true; enqueue(response, used); break;
    case NONE: enqueue(response, used); break;
  }
  used = 0;
}

void fault_output_add(uint8_t byte) {
  if (used < sizeof response) response[used++] = byte;
  if (byte == '\n') send_response();
}

bool fault_output_pending(void) { return begin < end || pull_armed; }

bool fault_output_flush(int fd, uint64_t now_ms) {
  while (begin < end && !(pull_armed && begin >= pull_at)) {
    unsigned n = end - begin;
    if (pull_armed && n > pull_at - begin) n = pull_at - begin;
    if (byte_ms) {
      if (now_ms < next_at) return true;
      next_at = now_ms + byte_ms;
      n = 1;
    }
    ssize_t written = write(fd, queue + begin, n);
    if (written <= 0) return true;
    begin += (unsigned)written;
  }
  if (pull_armed && begin >= pull_at) {
    fault_output_forget();
    return false;
  }
  if (begin == end) begin = end = byte_ms = 0;
  return true;
}

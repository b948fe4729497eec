/*
 * The simulated head: the firmware's core on a pseudo-terminal. Bench words come on standard input, or on the line as
 * `SIM:WORD values`; the core never sees those, and a shipped head does not know them.
 */
#include <poll.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <unistd.h>
#include "bench-hal.h"
#include "fault-output.h"
#include "head.h"
#include "pseudo-terminal.h"

static struct pty port = {-1, 0};
static bool reset_on_open, without_stdin, ended;
static unsigned boot_ms;
static uint64_t deaf_until, replug_at;
static volatile sig_atomic_t stopped;

static void restart(void) {
  virtual_sensor_power_on(&scene.sensor, scene.seed);
  fault_output_forget();
  head_power_on();
  deaf_until = bench_real_milliseconds() + boot_ms;
}

static void unplug(double ms) {
  pty_unplug(&port);
  fault_output_forget();
  replug_at = ms > 0 ? bench_real_milliseconds() + (uint64_t)ms : 0;
}

static void replug(void) {
  replug_at = 0;
  if (port.master >= 0) return;
  if (!pty_plug(&port)) exit(1);
  restart();
}

static bool obey(const char *text) {
  struct bench_command c = bench_word_obey(&scene, text);
  switch (c.word) {
    case WORD_UNKNOWN: return false;
    case WORD_DONE: return true;
    case WORD_BUTTON:
      scene.button_until_ms = bench_microseconds() / 1000 + (uint64_t)(c.count > 0 ? c.values[0] : 100);
      return true;
    case WORD_FAULT:
      if (strcasecmp(c.name, "sat")) return fault_output_arm(c.name, c.count, c.values[0]);
      return scene.sensor.saturate_once = true;
    case WORD_UNPLUG: return unplug(c.values[0]), true;
    case WORD_REPLUG: return replug(), true;
    case WORD_RESET: return restart(), true;
    case WORD_BOOT: return boot_ms = (unsigned)c.values[0], true;
    case WORD_QUIT: return ended = true;
  }
  return false;
}

/* Holds back the beginning of a line while it may still be `SIM:...`; everything else goes on to the firmware. */
static char held[256];
static unsigned held_count;

static void pass_held_on(void) {
  unsigned n = held_count;
  held_count = 0;
  for (unsigned i = 0; i < n; i++) head_receive((uint8_t)held[i]);
}

static void from_host(uint8_t byte) {
  static bool passing;
  bool end_of_line = byte == '\n' || byte == '\r';
  if (passing) {
    passing = !end_of_line;
    head_receive(byte);
  } else if (end_of_line) {
    held[held_count] = 0;
    if (held_count > 4 && obey(held + 4)) {
      held_count = 0;
      return;
    }
    pass_held_on();
    head_receive(byte);
  } else if (held_count < sizeof held - 1 && (held_count >= 4 || strncasecmp("SIM:" + held_count, (char *)&byte, 1) == 0)) {
    held[held_count++] = (char)byte;
  } else {
    pass_held_on();
    head_receive(byte);
    passing = true;
  }
}

static void read_port(void) {
  uint8_t bytes[512];
  ssize_t n = read(port.master, bytes, sizeof bytes);
  if (n > 0 && bench_real_milliseconds() < deaf_until) return; /* a boot loader has the line */
  for (ssize_t i = 0; i < n && port.master >= 0; i++) from_host(bytes[i]);
}

static void read_words(void) {
  static char line[256];
  static unsigned n;
  char bytes[256];
  ssize_t got = read(0, bytes, sizeof bytes);
  if (got <= 0) ended = true; /* whoever started the bench is gone */
  for (ssize_t i = 0; i < got; i++) {
    if (bytes[i] != '\n') {
      if (n < sizeof line - 1) line[n++] = bytes[i];
      continue;
    }
    line[n] = 0;
    n = 0;
    if (line[0] && !obey(line)) fprintf(stderr, "head-sim: \"%s\" is no bench word, or its values are not right\n", line);
    else if (line[0]) printf("ok %s\n", line), fflush(stdout);
  }
}

static void watch_opening(void) {
  static bool was_taken;
  bool taken = pty_taken(&port);
  if (taken && !was_taken && reset_on_open) restart();
  was_taken = taken;
}

static void step(void) {
  struct pollfd fds[2] = {{without_stdin ? -1 : 0, POLLIN, 0}, {port.master, POLLIN, 0}};
  bool taken = pty_taken(&port);
  if (!taken) fds[1].fd = -1; /* a hung-up terminal would make poll return at once for ever */
  poll(fds, 2, !taken || fault_output_pending() || scene.button_until_ms ? 1 : 10);
  watch_opening();
  if (fds[0].revents) read_words();
  if (fds[1].revents & POLLIN) read_port();
  head_poll();
  if (port.master >= 0 && !fault_output_flush(port.master, bench_real_milliseconds())) unplug(200);
  if (replug_at && bench_real_milliseconds() >= replug_at) replug();
}

static void on_signal(int number) {
  (void)number;
  stopped = 1;
}

static void usage(void) {
  fputs(
      "head-sim LINK [--fast] [--seed N] [--reset-on-open MS] [--store FILE] [--no-stdin]\n"
      "The firmware of the head on a pseudo-terminal named LINK. --fast: waiting costs no time.\n"
      "Words on standard input, or on the line as SIM:WORD values:\n"
      "  light f1..f8 clear nir     counts per ms at gain 1 from the lamp\n"
      "  ambient f1..f8 clear nir   the same, always there\n"
      "  noise x, flicker x, seed n, kelvin x, nack 0|1, stuck 0|1, analogue 0|1, lampbroken 0|1, ntcopen 0|1\n"
      "  button [ms], reset, boot ms, unplug [ms], replug, quit\n"
      "  fault cut [k] | dup | flip [bit] | silent | flood [n] | slow [ms] | drop [k] | glue | unplug [k] | sat\n",
      stderr);
  exit(2);
}

int main(int argc, char **argv) {
  const char *store_file = 0;
  uint64_t seed = 1;
  for (int i = 1; i < argc; i++) {
    bool more = i + 1 < argc;
    if (!strcmp(argv[i], "--fast")) bench_fast = true;
    else if (!strcmp(argv[i], "--no-stdin")) without_stdin = true;
    else if (!strcmp(argv[i], "--seed") && more) seed = strtoull(argv[++i], 0, 10);
    else if (!strcmp(argv[i], "--store") && more) store_file = argv[++i];
    else if (!strcmp(argv[i], "--reset-on-open") && more) reset_on_open = true, boot_ms = (unsigned)atoi(argv[++i]);
    else if (argv[i][0] != '-' && !port.link) port.link = argv[i];
    else usage();
  }
  if (!port.link) usage();
  signal(SIGTERM, on_signal);
  signal(SIGINT, on_signal);
  signal(SIGPIPE, SIG_IGN);
  bench_hal_begin(store_file);
  scene_standard(&scene, seed);
  fault_output_reset(seed);
  if (!pty_plug(&port)) return 1;
  restart();
  deaf_until = 0;
  printf("ready %s\n", port.link);
  fflush(stdout);
  while (!ended && !stopped) step();
  pty_unplug(&port);
  return 0;
}

/*
 * The ATmega328P firmware, as flashed, in libsimavr: its UART on a pseudo-terminal, the modelled sensor on its bus.
 * The same bench words as the simulated head on standard input (without `fault`); `stack` prints the RAM never used. Bench only; see LICENSE.md.
 */
#include <poll.h>
#include <signal.h>
#include <simavr/avr_uart.h>
#include <simavr/sim_avr.h>
#include <simavr/sim_elf.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>
#include "bench-words.h"
#include "pseudo-terminal.h"
#include "wires.h"

#define UART(n) avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), n)
#define SLICES_PER_SECOND 2000

static avr_t *avr;
static struct scene scene;
static struct pty port = {-1, 0};
static bool ended, flow_stopped, fast, was_taken;
static unsigned boot_ms;
static double deaf_until, replug_at, origin;
static avr_cycle_count_t origin_cycle;
static uint8_t queue[65536];
static unsigned queue_head, queue_tail;
static unsigned data_end; /* first address behind the firmware's data */
static volatile sig_atomic_t stopped;

static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return (double)t.tv_sec + (double)t.tv_nsec / 1e9;
}

static void restart_clock(void) {
  origin = now();
  origin_cycle = avr->cycle;
}

static void restart(void) {
  virtual_sensor_power_on(&scene.sensor, scene.seed);
  scene.sensor.lamp = false;
  avr_reset(avr);
  wires_paint_stack(avr, data_end);
  wires_after_reset(avr);
  queue_head = queue_tail = 0;
  flow_stopped = false;
  deaf_until = now() + boot_ms / 1000.0;
  restart_clock();
}

static void on_sent(avr_irq_t *irq, uint32_t value, void *param) {
  (void)irq;
  (void)param;
  uint8_t byte = (uint8_t)value;
  if (port.master >= 0 && write(port.master, &byte, 1) != 1) return; /* nobody listens: as on a real line, it is gone */
}

static void on_flow(avr_irq_t *irq, uint32_t value, void *param) {
  (void)irq;
  (void)value;
  flow_stopped = param != 0;
}

static void obey(const char *text) {
  if (!strcmp(text, "stack")) {
    printf("stack %u\n", wires_stack_left(avr));
    fflush(stdout);
    return;
  }
  struct bench_command c = bench_word_obey(&scene, text);
  double seconds = c.values[0] / 1000;
  switch (c.word) {
    case WORD_DONE: break;
    case WORD_BUTTON:
      scene.button_until_ms =
          avr->cycle / (avr->frequency / 1000) + (uint64_t)(c.count > 0 ? c.values[0] : 100);
      break;
    case WORD_UNPLUG:
      pty_unplug(&port);
      replug_at = seconds > 0 ? now() + seconds : 0;
      break;
    case WORD_REPLUG:
      if (port.master < 0 && pty_plug(&port)) restart();
      break;
    case WORD_RESET: restart(); break;
    case WORD_BOOT: boot_ms = (unsigned)c.values[0]; break;
    case WORD_QUIT: ended = true; break;
    default: fprintf(stderr, "head-simavr: \"%s\" is no bench word here, or its values are not right\n", text); return;
  }
  printf("ok %s\n", text);
  fflush(stdout);
}

static void read_words(void) {
  static char line[256];
  static unsigned n;
  char bytes[256];
  struct pollfd f = {0, POLLIN, 0};
  if (poll(&f, 1, 0) <= 0) return;
  ssize_t got = read(0, bytes, sizeof bytes);
  if (got <= 0) ended = true;
  for (ssize_t i = 0; i < got; i++) {
    if (bytes[i] != '\n') {
      if (n < sizeof line - 1) line[n++] = bytes[i];
      continue;
    }
    line[n] = 0;
    n = 0;
    if (line[0]) obey(line);
  }
}

static void exchange_with_port(void) {
  uint8_t bytes[512];
  bool taken = pty_taken(&port);
  if (taken && !was_taken) restart(); /* opening the port asserts DTR, which resets boards of this kind */
  was_taken = taken;
  ssize_t n = taken && queue_head - queue_tail < 60000 ? read(port.master, bytes, sizeof bytes) : 0;
  for (ssize_t i = 0; i < n; i++) queue[queue_head++ & 65535] = bytes[i];
  if (replug_at > 0 && now() >= replug_at) {
    replug_at = 0;
    if (port.master < 0 && pty_plug(&port)) restart();
  }
}

/* Half a millisecond of the board's time. */
static bool run_slice(void) {
  avr_cycle_count_t end = avr->cycle + avr->frequency / SLICES_PER_SECOND;
  while (!flow_stopped && queue_tail != queue_head) avr_raise_irq(UART(UART_IRQ_INPUT), queue[queue_tail++ & 65535]);
  while (avr->cycle < end) {
    int state = avr_run(avr);
    if (state == cpu_Done || state == cpu_Crashed) return false;
  }
  double ahead = (double)(avr->cycle - origin_cycle) / (double)avr->frequency - (now() - origin);
  if (!fast && ahead > 1.0 / SLICES_PER_SECOND) usleep((useconds_t)(ahead * 1e6));
  return true;
}

static void on_signal(int number) {
  (void)number;
  stopped = 1;
}

static bool load(const char *elf) {
  elf_firmware_t firmware;
  memset(&firmware, 0, sizeof firmware);
  if (elf_read_firmware(elf, &firmware)) return false;
  avr = avr_make_mcu_by_name("atmega328p");
  if (!avr || avr_init(avr)) return false;
  firmware.frequency = 16000000;
  avr_load_firmware(avr, &firmware);
  data_end = 0x100 + firmware.datasize + firmware.bsssize;
  return true;
}

static void connect_uart(void) {
  uint32_t flags = 0;
  avr_ioctl(avr, AVR_IOCTL_UART_GET_FLAGS('0'), &flags);
  flags &= (uint32_t)~(AVR_UART_FLAG_STDIO | AVR_UART_FLAG_POLL_SLEEP);
  avr_ioctl(avr, AVR_IOCTL_UART_SET_FLAGS('0'), &flags);
  avr_irq_register_notify(UART(UART_IRQ_OUTPUT), on_sent, 0);
  avr_irq_register_notify(UART(UART_IRQ_OUT_XON), on_flow, 0);
  avr_irq_register_notify(UART(UART_IRQ_OUT_XOFF), on_flow, &port);
}

int main(int argc, char **argv) {
  if (argc < 3) return fputs("head-simavr FIRMWARE.elf LINK [--fast] [--boot MS]\n", stderr), 2;
  for (int i = 3; i < argc; i++) {
    if (!strcmp(argv[i], "--fast")) fast = true;
    else if (!strcmp(argv[i], "--boot") && i + 1 < argc) boot_ms = (unsigned)atoi(argv[++i]);
  }
  port.link = argv[2];
  signal(SIGTERM, on_signal);
  signal(SIGINT, on_signal);
  signal(SIGPIPE, SIG_IGN);
  if (!load(argv[1])) return fprintf(stderr, "head-simavr: %s cannot be run\n", argv[1]), 1;
  scene_standard(&scene, 1);
  wires_connect(avr, &scene);
  wires_correct_twi(avr);
  connect_uart();
  if (!pty_plug(&port)) return 1;
  restart_clock();
  printf("ready %s\n", port.link);
  fflush(stdout);
  while (!ended && !stopped) {
    read_words();
    exchange_with_port();
    wires_update(avr, &scene);
    if (now() < deaf_until) {
      usleep(1000);
      queue_head = queue_tail = 0;
      restart_clock();
    } else if (!run_slice()) break;
  }
  pty_unplug(&port);
  return 0;
}

#include <stdio.h>
#include <string.h>
#include "check.h"

static unsigned long checks, failures;

void check(bool true_, const char *what, const char *file, int line) {
  checks++;
  if (true_) return;
  failures++;
  printf("%s:%d: not so: %s\n", file, line, what);
}

void check_text(const char *got, const char *wanted, const char *file, int line) {
  checks++;
  if (strcmp(got, wanted) == 0) return;
  failures++;
  printf("%s:%d: got    %s\n%*swanted %s\n", file, line, got, (int)strlen(file) + 6, "", wanted);
}

int main(void) {
  static const struct { const char *name; void (*run)(void); } tests[] = {
      {"number", test_number},       {"crc16", test_crc16},
      {"header-match", test_header_match}, {"program-line", test_program_line},
      {"errors", test_errors},       {"commands", test_commands},
      {"status", test_status},       {"frame", test_frame},
      {"trigger", test_trigger},     {"channel-store", test_channel_store},
      {"thermistor", test_thermistor}, {"random-bytes", test_random_bytes},
  };
  for (unsigned i = 0; i < sizeof tests / sizeof tests[0]; i++) {
    unsigned long before = checks;
    tests[i].run();
    printf("%-14s %lu checks\n", tests[i].name, checks - before);
  }
  printf("%lu checks, %lu failures\n", checks, failures);
  return failures ? 1 : 0;
}

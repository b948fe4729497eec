/* The commands of the line protocol (hardware-notes/protocol.md, section 3), one table per subject. */
#ifndef COMMANDS_H
#define COMMANDS_H
#include <stdint.h>
#include "arguments.h"
#include "flash.h"

#define PATTERN_BYTES 32

struct command {
  char pattern[PATTERN_BYTES];
  uint8_t least, most; /* parameters */
  void (*run)(const struct arguments *arguments);
};

struct command_table {
  const FLASH struct command *commands;
  uint8_t count;
};

extern const FLASH struct command_table common_commands, system_commands, sense_commands, trigger_commands,
    status_commands, calibration_commands;

/* Carries out one program message and answers it. `message` is cut up in place. */
void commands_execute(char *message);

#define COMMAND_TABLE(name, list) \
  const FLASH struct command_table name = {list, sizeof list / sizeof list[0]}

#endif

#include "commands.h"
#include "errors.h"
#include "header-match.h"
#include "reply.h"
#include "settings.h"

#define TABLES 6

static const FLASH struct command_table *table_at(uint8_t i) {
  switch (i) {
    case 0: return &common_commands;
    case 1: return &sense_commands;
    case 2: return &trigger_commands;
    case 3: return &system_commands;
    case 4: return &status_commands;
    default: return &calibration_commands;
  }
}

static const FLASH struct command *find(const char *header) {
  for (uint8_t t = 0; t < TABLES; t++) {
    const FLASH struct command_table *table = table_at(t);
    for (uint8_t i = 0; i < table->count; i++)
      if (header_matches(table->commands[i].pattern, header)) return &table->commands[i];
  }
  return 0;
}

static void run(const char *header, const struct arguments *arguments) {
  const FLASH struct command *command = find(header);
  if (!command) errors_push(ERROR_UNDEFINED_HEADER, 0);
  else if (arguments->count > command->most) errors_push(ERROR_PARAMETER_NOT_ALLOWED, 0);
  else if (arguments->count < command->least) errors_push(ERROR_MISSING_PARAMETER, 0);
  else command->run(arguments);
}

void commands_execute(char *message) {
  reply_begin_message();
  while (message) {
    struct arguments arguments;
    const char *header;
    message = arguments_cut(message, &header, &arguments);
    if (*header == 0) continue;
    reply_begin_unit();
    run(header, &arguments);
  }
  reply_end_message(settings_checksum);
}

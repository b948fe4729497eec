/* SYSTem: errors, versions, checksum. */
#include "commands.h"
#include "errors.h"
#include "head.h"
#include "reply.h"
#include "settings.h"

static void next_error(const struct arguments *a) {
  (void)a;
  errors_reply_next();
}

static void error_count(const struct arguments *a) {
  (void)a;
  reply_integer(errors_count());
}

static void version(const struct arguments *a) {
  (void)a;
  reply_text(TEXT("1999.0"));
}

static void protocol_version(const struct arguments *a) {
  (void)a;
  reply_text(TEXT(HEAD_PROTOCOL));
}

static void checksum(const struct arguments *a) { arguments_boolean(a, &settings_checksum); }

static void checksum_query(const struct arguments *a) {
  (void)a;
  reply_integer(settings_checksum);
}

static const FLASH struct command list[] = {
    {"SYSTem:ERRor[:NEXT]?", 0, 0, next_error},
    {"SYSTem:ERRor:COUNt?", 0, 0, error_count},
    {"SYSTem:VERSion?", 0, 0, version},
    {"SYSTem:PROTocol:VERSion?", 0, 0, protocol_version},
    {"SYSTem:COMMunicate:CRC", 1, 1, checksum},
    {"SYSTem:COMMunicate:CRC?", 0, 0, checksum_query},
};
COMMAND_TABLE(system_commands, list);

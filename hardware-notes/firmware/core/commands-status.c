/* STATus: the operation and questionable registers. */
#include "commands.h"
#include "frame.h"
#include "reply.h"
#include "status.h"

static const FLASH struct number_range enable_range = {0, 65535, 0};

static void enable(const struct arguments *a, struct status_register *reg) {
  int32_t value;
  if (arguments_whole(a, 0, &enable_range, &value)) reg->enable = (uint16_t)(value & 0x7FFF); /* bit 15 is never used */
}

static void operation_event(const struct arguments *a) {
  (void)a;
  reply_integer(status_take_event(&status_operation));
}

static void operation_condition(const struct arguments *a) {
  (void)a;
  frame_temperature(); /* brings SETTling up to date */
  reply_integer(status_operation.condition);
}

static void operation_enable(const struct arguments *a) { enable(a, &status_operation); }

static void operation_enable_query(const struct arguments *a) {
  (void)a;
  reply_integer(status_operation.enable);
}

static void questionable_event(const struct arguments *a) {
  (void)a;
  reply_integer(status_take_event(&status_questionable));
}

static void questionable_condition(const struct arguments *a) {
  (void)a;
  reply_integer(status_questionable.condition);
}

static void questionable_enable(const struct arguments *a) { enable(a, &status_questionable); }

static void questionable_enable_query(const struct arguments *a) {
  (void)a;
  reply_integer(status_questionable.enable);
}

static void preset(const struct arguments *a) {
  (void)a;
  status_operation.enable = status_questionable.enable = 0;
}

static const FLASH struct command list[] = {
    {"STATus:OPERation[:EVENt]?", 0, 0, operation_event},
    {"STATus:OPERation:CONDition?", 0, 0, operation_condition},
    {"STATus:OPERation:ENABle", 1, 1, operation_enable},
    {"STATus:OPERation:ENABle?", 0, 0, operation_enable_query},
    {"STATus:QUEStionable[:EVENt]?", 0, 0, questionable_event},
    {"STATus:QUEStionable:CONDition?", 0, 0, questionable_condition},
    {"STATus:QUEStionable:ENABle", 1, 1, questionable_enable},
    {"STATus:QUEStionable:ENABle?", 0, 0, questionable_enable_query},
    {"STATus:PRESet", 0, 0, preset},
};
COMMAND_TABLE(status_commands, list);

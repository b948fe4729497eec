/* CALibration: effective centres and widths, kept over power. */
#include "channel-store.h"
#include "commands.h"
#include "errors.h"
#include "sensor.h"
#include "status.h"

#define TENTHS_OF_NM 10 /* decimals of a metre */
static const FLASH struct number_range channel_range = {1, SENSOR_CHANNELS, 1};
static const FLASH struct number_range centre_range = {3000, 11000, 5500};
static const FLASH struct number_range width_range = {10, 3000, 400};

static void channel(const struct arguments *a) {
  int32_t number, centre, width;
  if (!arguments_whole(a, 0, &channel_range, &number) ||
      !arguments_number(a, 1, TENTHS_OF_NM, UNIT_METRE, &centre_range, &centre) ||
      !arguments_number(a, 2, TENTHS_OF_NM, UNIT_METRE, &width_range, &width))
    return;
  if (sensor_channels[number - 1].centre == 0) {
    errors_push(ERROR_OUT_OF_RANGE, TEXT("channel without a centre"));
    return;
  }
  channel_store_set((uint8_t)(number - 1), (uint16_t)centre, (uint16_t)width);
  status_condition(&status_questionable, QUESTIONABLE_CALIBRATION, false);
}

static void forget(const struct arguments *a) {
  (void)a;
  channel_store_forget();
  status_condition(&status_questionable, QUESTIONABLE_CALIBRATION, false);
}

static const FLASH struct command list[] = {
    {"CALibration:CHANnel", 3, 3, channel},
    {"CALibration:DEFault", 0, 0, forget},
};
COMMAND_TABLE(calibration_commands, list);

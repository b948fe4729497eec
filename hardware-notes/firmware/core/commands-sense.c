/* SENSe, INPut, OUTPut: the channels, and what a frame is taken with. */
#include "channel-store.h"
#include "commands.h"
#include "errors.h"
#include "frame.h"
#include "reply.h"
#include "sensor.h"
#include "settings.h"

static const FLASH struct number_range channel_range = {1, SENSOR_CHANNELS, 1};

static void function(const struct arguments *a) {
  (void)a;
  reply_quoted(TEXT("BAND"));
}

static void geometry(const struct arguments *a) {
  (void)a;
  reply_quoted(TEXT("45/0"));
}

static void channel_count(const struct arguments *a) {
  (void)a;
  reply_integer(SENSOR_CHANNELS);
}

static void wavelength(uint16_t tenths_nm) {
  if (tenths_nm) reply_scientific(tenths_nm, -10);
  else reply_not_a_number();
}

static void catalogue(const struct arguments *a) {
  int32_t first = 1, count = SENSOR_CHANNELS;
  if (a->count == 1) {
    errors_push(ERROR_MISSING_PARAMETER, 0);
    return;
  }
  if (a->count == 2 && !(arguments_whole(a, 0, &channel_range, &first) && arguments_whole(a, 1, &channel_range, &count)))
    return;
  if (first + count - 1 > SENSOR_CHANNELS) {
    errors_push(ERROR_OUT_OF_RANGE, 0);
    return;
  }
  for (uint8_t i = (uint8_t)(first - 1); i < first - 1 + count; i++) {
    reply_quoted(sensor_channels[i].name);
    wavelength(channel_centre(i));
    wavelength(channel_width(i));
  }
}

/* Only the gains there are: anything between is out of range, nothing is rounded in silence. */
static void gain(const struct arguments *a) {
  int32_t thousandths;
  if (!arguments_number(a, 0, GAIN_DECIMALS, UNIT_NONE, &settings_gain_range, &thousandths)) return;
  for (uint8_t code = 0; code < SENSOR_GAIN_CODES; code++)
    if (settings_gain_tenths(code) * 100l == thousandths) {
      settings.gain_code = code;
      return;
    }
  errors_push(ERROR_OUT_OF_RANGE, 0);
}

static void gain_query(const struct arguments *a) {
  int32_t limit;
  if (a->count == 0) reply_fixed(settings_gain_tenths(settings.gain_code), 1);
  else if (arguments_limit(a, &settings_gain_range, &limit)) reply_fixed((uint32_t)limit, GAIN_DECIMALS);
}

static void gain_catalogue(const struct arguments *a) {
  (void)a;
  for (uint8_t code = 0; code < SENSOR_GAIN_CODES; code++) reply_fixed(settings_gain_tenths(code), 1);
}

static void aperture(const struct arguments *a) {
  int32_t microseconds;
  if (arguments_number(a, 0, 6, UNIT_SECOND, &settings_aperture_range, &microseconds))
    settings.steps = settings_steps_of((uint32_t)microseconds);
}

static void aperture_query(const struct arguments *a) {
  int32_t limit = (int32_t)settings_aperture_microseconds(settings.steps);
  if (a->count == 0 || arguments_limit(a, &settings_aperture_range, &limit)) reply_scientific((uint32_t)limit, -6);
}

static void averages(const struct arguments *a) {
  int32_t count;
  if (arguments_whole(a, 0, &settings_average_range, &count)) settings.averages = (uint8_t)count;
}

static void averages_query(const struct arguments *a) {
  int32_t limit = settings.averages;
  if (a->count == 0 || arguments_limit(a, &settings_average_range, &limit)) reply_integer(limit);
}

static void full_scale(const struct arguments *a) {
  (void)a;
  reply_integer(sensor_full_scale(settings.steps));
}

static void pass_count(const struct arguments *a) {
  (void)a;
  reply_integer(SENSOR_PASSES);
}

static void last_frame_number(const struct arguments *a) {
  (void)a;
  reply_integer(frame_number());
}

static void lamp(const struct arguments *a) {
  if (arguments_boolean(a, &settings.lamp_between_readings)) frame_lamp_rest();
}

static void lamp_query(const struct arguments *a) {
  (void)a;
  reply_integer(settings.lamp_between_readings);
}

static const FLASH struct command list[] = {
    {"SENSe:FUNCtion?", 0, 0, function},
    {"SENSe:GEOMetry?", 0, 0, geometry},
    {"SENSe:CHANnel:COUNt?", 0, 0, channel_count},
    {"SENSe:CHANnel:CATalog?", 0, 2, catalogue},
    {"INPut:GAIN", 1, 1, gain},
    {"INPut:GAIN?", 0, 1, gain_query},
    {"INPut:GAIN:CATalog?", 0, 0, gain_catalogue},
    {"SENSe:APERture", 1, 1, aperture},
    {"SENSe:APERture?", 0, 1, aperture_query},
    {"SENSe:AVERage:COUNt", 1, 1, averages},
    {"SENSe:AVERage:COUNt?", 0, 1, averages_query},
    {"SENSe:RANGe[:UPPer]?", 0, 0, full_scale},
    {"SENSe:PASSes?", 0, 0, pass_count},
    {"SENSe:FRAMe?", 0, 0, last_frame_number},
    {"OUTPut[:STATe]", 1, 1, lamp},
    {"OUTPut[:STATe]?", 0, 0, lamp_query},
};
COMMAND_TABLE(sense_commands, list);

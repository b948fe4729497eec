#include "channel-store.h"
#include "crc16.h"
#include "hal.h"
#include "sensor.h"

/*
 * Slot: 'T' 'L', layout 1, sequence, channels, then per channel centre and width low byte first, CRC-16 low byte
 * first over all before it. A slot whose first byte is 0xFF is empty.
 */
#define SLOT_BYTES 64
#define SLOTS 2
#define LAYOUT 1
#define HEADER_BYTES 5
#define BODY_BYTES (HEADER_BYTES + 4 * SENSOR_CHANNELS)
_Static_assert(BODY_BYTES + 2 <= SLOT_BYTES, "a slot holds all channels");
_Static_assert(SLOTS * SLOT_BYTES <= STORE_BYTES, "the store holds both slots");

static uint16_t centres[SENSOR_CHANNELS], widths[SENSOR_CHANNELS]; /* 0: nominal */
static uint8_t slot, sequence;
static bool readable;

static uint8_t byte_at(uint8_t s, uint8_t i) { return hal_store_read((uint8_t)(s * SLOT_BYTES + i)); }
static uint16_t word_at(uint8_t s, uint8_t i) { return (uint16_t)(byte_at(s, i) | (byte_at(s, (uint8_t)(i + 1)) << 8)); }

static bool slot_whole(uint8_t s) {
  uint16_t crc = CRC16_START;
  for (uint8_t i = 0; i < BODY_BYTES; i++) crc = crc16_add(crc, byte_at(s, i));
  return byte_at(s, 0) == 'T' && byte_at(s, 1) == 'L' && byte_at(s, 2) == LAYOUT &&
         byte_at(s, 4) == SENSOR_CHANNELS && crc == word_at(s, BODY_BYTES);
}

static void take(uint8_t s) {
  slot = s;
  sequence = byte_at(s, 3);
  for (uint8_t i = 0; i < SENSOR_CHANNELS; i++) {
    centres[i] = word_at(s, (uint8_t)(HEADER_BYTES + 4 * i));
    widths[i] = word_at(s, (uint8_t)(HEADER_BYTES + 4 * i + 2));
  }
}

bool channel_store_load(void) {
  bool whole[SLOTS];
  slot = SLOTS - 1;
  sequence = 0;
  for (uint8_t i = 0; i < SENSOR_CHANNELS; i++) centres[i] = widths[i] = 0;
  for (uint8_t s = 0; s < SLOTS; s++) whole[s] = slot_whole(s);
  /* Sequence numbers wrap: the newer of two neighbours is one ahead. */
  if (whole[0] && whole[1]) take((int8_t)(byte_at(1, 3) - byte_at(0, 3)) > 0 ? 1 : 0);
  else if (whole[0]) take(0);
  else if (whole[1]) take(1);
  readable = whole[0] || whole[1] || (byte_at(0, 0) == 0xFF && byte_at(1, 0) == 0xFF);
  return readable;
}

bool channel_store_readable(void) { return readable; }
uint16_t channel_centre(uint8_t c) { return centres[c] ? centres[c] : sensor_channels[c].centre; }
uint16_t channel_width(uint8_t c) { return widths[c] ? widths[c] : sensor_channels[c].width; }

static uint16_t write_byte(uint8_t i, uint8_t byte, uint16_t crc) {
  hal_store_write((uint8_t)(slot * SLOT_BYTES + i), byte);
  return crc16_add(crc, byte);
}

static uint16_t write_word(uint8_t i, uint16_t word, uint16_t crc) {
  crc = write_byte(i, (uint8_t)word, crc);
  return write_byte((uint8_t)(i + 1), (uint8_t)(word >> 8), crc);
}

static void save(void) {
  uint16_t crc = CRC16_START;
  slot = (uint8_t)((slot + 1) % SLOTS);
  crc = write_byte(0, 'T', crc);
  crc = write_byte(1, 'L', crc);
  crc = write_byte(2, LAYOUT, crc);
  crc = write_byte(3, ++sequence, crc);
  crc = write_byte(4, SENSOR_CHANNELS, crc);
  for (uint8_t i = 0; i < SENSOR_CHANNELS; i++) {
    crc = write_word((uint8_t)(HEADER_BYTES + 4 * i), centres[i], crc);
    crc = write_word((uint8_t)(HEADER_BYTES + 4 * i + 2), widths[i], crc);
  }
  write_word(BODY_BYTES, crc, crc);
  readable = true;
}

void channel_store_set(uint8_t channel, uint16_t centre, uint16_t width) {
  centres[channel] = centre;
  widths[channel] = width;
  save();
}

void channel_store_forget(void) {
  for (uint8_t i = 0; i < SENSOR_CHANNELS; i++) centres[i] = widths[i] = 0;
  save();
}

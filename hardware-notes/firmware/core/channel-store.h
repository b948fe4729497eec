/* Effective centres and widths of the channels (filter times lamp) that outlive power. */
#ifndef CHANNEL_STORE_H
#define CHANNEL_STORE_H
#include <stdbool.h>
#include <stdint.h>

/* Loads what is stored. False when something is there that cannot be read: nominal values are then used. */
bool channel_store_load(void);
bool channel_store_readable(void);
/* 0.1 nm; 0 when the channel has none. */
uint16_t channel_centre(uint8_t channel);
uint16_t channel_width(uint8_t channel);
/* Writes to the older of two slots, so that a loss of power leaves the other one whole. */
void channel_store_set(uint8_t channel, uint16_t centre, uint16_t width);
void channel_store_forget(void);

#endif

/*
 * All that the core asks of a board. A port to another board is one file that defines these functions and a loop
 * that calls head_power_on() once, head_receive() for each byte and head_poll() often.
 */
#ifndef HAL_H
#define HAL_H

#include <stdbool.h>
#include <stdint.h>

/* Milliseconds since some moment; wraps around. */
uint32_t hal_millis(void);
/* Waits at least `ms` milliseconds. Bytes that arrive meanwhile are kept by the board (see head_overrun). */
void hal_pause_ms(uint16_t ms);

/* Sends one byte to the host; may wait until there is room. */
void hal_send(uint8_t byte);

/* Writes `count` bytes to a register of a device on the two-wire bus. False: no acknowledge, or the bus hangs. */
bool hal_bus_write(uint8_t address, uint8_t reg, const uint8_t *bytes, uint8_t count);
/* Reads `count` bytes from a register on. False as above; `bytes` is then undefined. */
bool hal_bus_read(uint8_t address, uint8_t reg, uint8_t *bytes, uint8_t count);

/* Switches the lamp's constant-current source. */
void hal_lamp(bool on);
/* Whether current flows through the lamp as it should while it is on. */
bool hal_lamp_current_flows(void);

/* The thermistor's divider, 0..1023 of the converter's reference (thermistor.h). */
uint16_t hal_thermistor_ratio(void);

/* Whether the button is down at this moment; the core debounces. */
bool hal_button_down(void);

/* Bytes that outlive power: at least STORE_BYTES of them; erased bytes read 0xFF. */
#define STORE_BYTES 128
uint8_t hal_store_read(uint8_t at);
void hal_store_write(uint8_t at, uint8_t byte);

#endif

/* IEEE 488.2 status byte and standard event register, SCPI operation and questionable registers. */
#ifndef STATUS_H
#define STATUS_H
#include <stdbool.h>
#include <stdint.h>

#define EVENT_COMPLETE 1u
#define EVENT_QUERY 4u
#define EVENT_DEVICE 8u
#define EVENT_EXECUTION 16u
#define EVENT_COMMAND 32u
#define EVENT_POWER_ON 128u

#define OPERATION_SETTLING (1u << 1)
#define OPERATION_MEASURING (1u << 4)
#define OPERATION_WAITING (1u << 5)

#define QUESTIONABLE_TEMPERATURE (1u << 4)
#define QUESTIONABLE_CALIBRATION (1u << 8)
#define QUESTIONABLE_SATURATED (1u << 9)
#define QUESTIONABLE_LOW_SIGNAL (1u << 10)
#define QUESTIONABLE_LAMP (1u << 11)
#define QUESTIONABLE_AMBIENT (1u << 12)

struct status_register {
  uint16_t condition; /* as it is now */
  uint16_t event;     /* each condition that came since the last reading of this */
  uint16_t enable;
};
extern struct status_register status_operation, status_questionable;

void status_power_on(void);
void status_clear_events(void);
/* Sets or clears condition bits; a bit that rises is kept in `event`. */
void status_condition(struct status_register *reg, uint16_t bits, bool on);
uint16_t status_take_event(struct status_register *reg);

void status_event(uint8_t bits);
uint8_t status_take_events(void);
extern uint8_t status_event_enable, status_service_enable;
uint8_t status_byte(bool errors_waiting);

#endif

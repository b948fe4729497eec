/* Whether the head's temperature still moves. */
#ifndef SETTLING_H
#define SETTLING_H
#include <stdbool.h>
#include <stdint.h>

/* The temperature this long ago is the one to compare with, and it may have moved by this much. */
#define SETTLING_PERIOD_MS 60000ul
#define SETTLING_CENTIKELVIN 50

void settling_power_on(void);
/* Call now and then with the present temperature, 0.01 K (0: unknown). Updates the SETTling condition. */
void settling_poll(uint16_t centikelvin);

#endif

#include "settling.h"
#include "hal.h"
#include "status.h"

static uint16_t earlier; /* temperature a period ago; 0: none */
static uint32_t since;
static bool moved;

void settling_power_on(void) {
  earlier = 0;
  moved = false;
  since = hal_millis();
}

void settling_poll(uint16_t now) {
  if (now == 0) return;
  if (earlier == 0) earlier = now;
  int16_t change = (int16_t)(now - earlier);
  if (change > SETTLING_CENTIKELVIN || change < -SETTLING_CENTIKELVIN) moved = true;
  status_condition(&status_operation, OPERATION_SETTLING, moved);
  if (hal_millis() - since < SETTLING_PERIOD_MS) return;
  since += SETTLING_PERIOD_MS;
  earlier = now;
  moved = false;
}

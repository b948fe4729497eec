/* Against R = 10k exp(B (1/T - 1/298.15)), B = 3950 K. The straight lines between the points cost up to 0.08 K. */
#include "thermistor.h"
#include <math.h>
#include "check.h"

void test_thermistor(void) {
  CHECK(thermistor_centikelvin(0) == 0);
  CHECK(thermistor_centikelvin(1023) == 0);
  CHECK(thermistor_centikelvin(65535) == 0);
  for (uint16_t ratio = 100; ratio <= 900; ratio++) {
    double ohm = 10e3 * ratio / (1024.0 - ratio), kelvin = 1 / (log(ohm / 10e3) / 3950 + 1 / 298.15);
    CHECK(fabs(thermistor_centikelvin(ratio) / 100.0 - kelvin) < 0.08);
  }
  for (uint16_t ratio = 1; ratio < 1023; ratio++) {
    uint16_t a = thermistor_centikelvin(ratio), b = thermistor_centikelvin((uint16_t)(ratio + 1));
    CHECK(a == 0 || b == 0 || a >= b);
  }
}

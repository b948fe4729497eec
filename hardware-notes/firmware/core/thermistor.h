#ifndef THERMISTOR_H
#define THERMISTOR_H
#include <stdint.h>

/*
 * Temperature in 0.01 K of a 10 kohm (25 degC), B = 3950 K thermistor to ground below a 10 kohm resistor to the
 * converter's reference, from the converter's reading 0..1023. 0: wire open or shorted, or outside 250 to 370 K.
 */
uint16_t thermistor_centikelvin(uint16_t ratio);

#endif

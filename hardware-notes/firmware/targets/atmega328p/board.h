/* Pins of the ATmega328P board (hardware-notes/wiring.md). Numbers in brackets: the labels of Uno- and Nano-shaped boards. */
#ifndef BOARD_H
#define BOARD_H

#define LAMP_PORT PORTB
#define LAMP_DDR DDRB
#define LAMP_BIT 1 /* PB1 (D9): enables the lamp's constant-current source */
#define BUTTON_PIN PIND
#define BUTTON_PORT PORTD
#define BUTTON_BIT 2 /* PD2 (D2): button to ground, pull-up inside */
#define THERMISTOR_CHANNEL 0 /* ADC0 (A0) */
#define LAMP_SENSE_CHANNEL 1 /* ADC1 (A1): across the 10 ohm sense resistor */
/* PC4 (A4) SDA, PC5 (A5) SCL, PD0 (D0) RXD, PD1 (D1) TXD */

/* The lamp's sense resistor carries 20 mA: 200 mV, 40 counts of 5 V. Less than a quarter is no lamp. */
#define LAMP_SENSE_LEAST 10

#define BAUD 115200ul
#define BUS_HERTZ 400000ul

#endif

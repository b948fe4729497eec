#ifndef CRC16_H
#define CRC16_H
#include <stdint.h>

/* CRC-16/CCITT-FALSE: polynomial 0x1021, start 0xFFFF, not reflected, no final xor; "123456789" gives 0x29B1. */
#define CRC16_START 0xFFFFu
uint16_t crc16_add(uint16_t crc, uint8_t byte);

#endif

/* The check value of CRC-16/CCITT-FALSE (IBM-3740 in the catalogue of parametrised CRC algorithms): 29B1. */
#include "crc16.h"
#include "check.h"

void test_crc16(void) {
  uint16_t crc = CRC16_START;
  for (const char *c = "123456789"; *c; c++) crc = crc16_add(crc, (uint8_t)*c);
  CHECK(crc == 0x29B1);
  CHECK(CRC16_START == 0xFFFF);
}

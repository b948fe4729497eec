/**
 * CRC-16/CCITT-FALSE: polynomial 0x1021, start 0xFFFF, not reflected, no final xor, over the latin1 bytes of a string.
 * Check value: crc16('123456789') is 0x29B1 (catalogue of parametrised CRC algorithms, entry CRC-16/IBM-3740).
 */
export function crc16(text: string): number {
  let crc = 0xffff;
  for (let i = 0; i < text.length; i++) {
    crc ^= (text.charCodeAt(i) & 0xff) << 8;
    for (let bit = 0; bit < 8; bit++) crc = (crc & 0x8000 ? (crc << 1) ^ 0x1021 : crc << 1) & 0xffff;
  }
  return crc;
}

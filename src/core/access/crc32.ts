/**
 * The 32-bit cyclic redundancy check of a text in ASCII, as 4 bytes, most significant first. It tells a typo from
 * another text, and protects from nothing else.
 *
 * Polynomial 0x04C11DB7, reflected (0xEDB88320), start and final inversion 0xFFFFFFFF.
 * Source: ISO/IEC 13239:2002, 4.2.5.3 (32-bit frame check sequence); check value of "123456789" is CBF43926.
 */
export function crc32(text: string): Uint8Array {
  let remainder = 0xffffffff
  for (let index = 0; index < text.length; index++) {
    remainder ^= text.charCodeAt(index)
    for (let bit = 0; bit < 8; bit++) remainder = (remainder >>> 1) ^ (remainder & 1 ? 0xedb88320 : 0)
  }
  const check = ~remainder
  return Uint8Array.of(check >>> 24, check >>> 16, check >>> 8, check)
}

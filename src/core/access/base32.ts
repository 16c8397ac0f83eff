const ALPHABET = 'abcdefghijklmnopqrstuvwxyz234567'
const BITS = 5

/** Bytes in base 32 (RFC 4648, section 6), in small letters and without padding: one word to select with a double click. */
export function base32(bytes: Uint8Array): string {
  const bits = Array.from(bytes, (byte) => byte.toString(2).padStart(8, '0')).join('')
  const digits = bits.match(/.{1,5}/g) ?? []
  return digits.map((digit) => ALPHABET[parseInt(digit.padEnd(BITS, '0'), 2)]).join('')
}

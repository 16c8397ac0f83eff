import { createHash, timingSafeEqual } from 'node:crypto'

/** SHA-256, and a comparison whose time does not tell how far two digests agree. */
export const digests = {
  of: (text: string): Uint8Array => createHash('sha256').update(text).digest(),
  equal: (one: Uint8Array, other: Uint8Array): boolean =>
    one.length === other.length && timingSafeEqual(one, other),
}

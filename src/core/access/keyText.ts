import type { KeyKind } from './apiKey.ts'
import { base32 } from './base32.ts'
import { crc32 } from './crc32.ts'

/**
 * How a key is written: sdk_<id>_<secret><checksum>, or sdp_ where it may be published. All of it in base 32: the id
 * 10 bytes in 16 digits, the secret 32 bytes in 52, the checksum of all before it (CRC-32) 4 bytes in 7.
 */
const MARKS: Readonly<Record<KeyKind, string>> = { secret: 'sdk', publishable: 'sdp' }
const FORM = /^((?:sdk|sdp)_([a-z2-7]{16})_[a-z2-7]{52})([a-z2-7]{7})$/
const ID_BYTES = 10
const SECRET_BYTES = 32

/** Writes a new key. `random` gives that many unpredictable bytes. */
export function writeKey(kind: KeyKind, random: (bytes: number) => Uint8Array): { id: string; text: string } {
  const id = base32(random(ID_BYTES))
  const start = `${MARKS[kind]}_${id}_${base32(random(SECRET_BYTES))}`
  return { id, text: start + base32(crc32(start)) }
}

/** The id in what should be a key, and whether its checksum fits; null where it does not have the form of a key. */
export function readKey(text: string): { readonly id: string; readonly checksumFits: boolean } | null {
  const [, start, id, checksum] = FORM.exec(text) ?? []
  if (start === undefined || id === undefined) return null
  return { id, checksumFits: base32(crc32(start)) === checksum }
}

/** What the key of BOOTSTRAP_ADMIN_KEY may be: long enough not to be guessed, and nothing that a header cannot carry. */
export const CHOSEN_KEY = /^[A-Za-z0-9_-]{32,256}$/

/** True of a text that holds a key of this service, or most of one. */
export const looksLikeKey = (text: string) => /sd[kp]_[a-z2-7]{16}_[a-z2-7]{20}/i.test(text)

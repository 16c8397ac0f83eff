import { createHash } from 'node:crypto'
import { crc32 as zlibCrc32 } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { base32 } from '../../../src/core/access/base32.ts'
import { crc32 } from '../../../src/core/access/crc32.ts'
import { CHOSEN_KEY, looksLikeKey, readKey, writeKey } from '../../../src/core/access/keyText.ts'

/** Bytes that a test can repeat. */
const bytesOf = (seed: string) => (length: number) =>
  createHash('sha512').update(`${seed}${length}`).digest().subarray(0, length)
const anyKey = fc
  .record({ kind: fc.constantFrom('secret' as const, 'publishable' as const), seed: fc.string() })
  .map(({ kind, seed }) => ({ kind, ...writeKey(kind, bytesOf(seed)) }))

describe('the text of a key', () => {
  it('names its kind and its id, and is one word of 80 small letters and digits', () => {
    fc.assert(
      fc.property(anyKey, ({ kind, id, text }) => {
        expect(text).toMatch(/^[a-z0-9_]{80}$/)
        expect(text.startsWith(`${kind === 'secret' ? 'sdk' : 'sdp'}_${id}_`)).toBe(true)
      }),
    )
  })

  it('asks for 10 bytes of its own for the id, and for 32 for the secret', () => {
    const asked: number[] = []
    writeKey('secret', (bytes) => {
      asked.push(bytes)
      return new Uint8Array(bytes)
    })
    expect(asked).toEqual([10, 32])
  })

  it('is read back', () => {
    fc.assert(
      fc.property(anyKey, ({ id, text }) => {
        expect(readKey(text)).toEqual({ id, checksumFits: true })
        expect(looksLikeKey(text)).toBe(true)
      }),
    )
  })

  it('is told from a typo: any one other digit, and any two neighbours changed over', () => {
    fc.assert(
      fc.property(
        anyKey,
        fc.nat(74),
        fc.constantFrom(...Array.from('abcdefghijklmnopqrstuvwxyz234567')),
        ({ text }, at, digit) => {
          const place = at + 5
          const other = text.slice(0, place) + digit + text.slice(place + 1)
          const swapped = text.slice(0, place - 1) + text[place]! + text[place - 1]! + text.slice(place + 1)
          for (const typo of [other, swapped].filter((each) => each !== text))
            expect(readKey(typo)?.checksumFits ?? false).toBe(false)
        },
      ),
    )
  })

  test.each([
    '',
    'sdk',
    'sdk_',
    `sdx_${'a'.repeat(16)}_${'a'.repeat(59)}`,
    `sdk_${'a'.repeat(16)}_${'a'.repeat(58)}`,
  ])('"%s" does not have its form', (text) => {
    expect(readKey(text)).toBeNull()
  })

  test('what follows or goes before a key is no part of it', () => {
    const { text } = writeKey('secret', bytesOf('one'))
    for (const other of [` ${text}`, `${text}\n`, `${text}a`, text.toUpperCase()])
      expect(readKey(other)).toBeNull()
    for (const holding of [`key=${text}`, text.slice(0, -20), text.toUpperCase()])
      expect(looksLikeKey(holding)).toBe(true)
    for (const other of ['sdk_docs', 'sdk_mfrggzdfmztwq2lk', 'a sentence'])
      expect(looksLikeKey(other)).toBe(false)
  })
})

test('a chosen key has 32 to 256 characters that every header can carry', () => {
  for (const fit of ['a'.repeat(32), 'Z9_-'.repeat(64)]) expect(CHOSEN_KEY.test(fit)).toBe(true)
  for (const unfit of ['a'.repeat(31), 'a'.repeat(257), `${'a'.repeat(40)} `, `${'a'.repeat(40)}ä`])
    expect(CHOSEN_KEY.test(unfit), unfit).toBe(false)
})

describe('crc32', () => {
  it('has the published check value', () => {
    expect(Buffer.from(crc32('123456789')).toString('hex')).toBe('cbf43926')
    expect(Buffer.from(crc32('')).toString('hex')).toBe('00000000')
  })

  it('agrees with zlib on any text in ASCII', () => {
    const ascii = fc.string({ unit: 'binary-ascii' })
    fc.assert(
      fc.property(ascii, (text) => {
        expect(Buffer.from(crc32(text)).readUInt32BE()).toBe(zlibCrc32(text))
      }),
    )
  })
})

describe('base32', () => {
  // RFC 4648, section 10.
  test.each([
    ['', ''],
    ['f', 'MY======'],
    ['fo', 'MZXQ===='],
    ['foo', 'MZXW6==='],
    ['foob', 'MZXW6YQ='],
    ['fooba', 'MZXW6YTB'],
    ['foobar', 'MZXW6YTBOI======'],
  ])('writes "%s" as RFC 4648 does, in small letters and without padding', (text, published) => {
    expect(base32(Buffer.from(text))).toBe(published.toLowerCase().replaceAll('=', ''))
  })
})

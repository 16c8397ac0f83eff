import { describe, expect, it } from 'vitest'
import { BAD_KEYS_A_MINUTE, openBadKeys } from '../../src/useCases/badKeys.ts'

const start = Date.UTC(2026, 0, 31, 12)
const after = (seconds: number) => new Date(start + seconds * 1_000)

function openFull() {
  const badKeys = openBadKeys()
  for (let count = 0; count < BAD_KEYS_A_MINUTE; count++) badKeys.countBad('192.0.2.1', after(count / 2))
  return badKeys
}

describe('the count of bad keys', () => {
  it('makes an address wait once it has sent so many within a minute, until the minute has passed', () => {
    const badKeys = openBadKeys()
    for (let count = 0; count < BAD_KEYS_A_MINUTE; count++) {
      expect(badKeys.waitSeconds('192.0.2.1', after(0))).toBe(0)
      badKeys.countBad('192.0.2.1', after(0))
    }
    expect(badKeys.waitSeconds('192.0.2.1', after(0))).toBe(60)
    expect(badKeys.waitSeconds('192.0.2.1', after(45.5))).toBe(15)
    expect(badKeys.waitSeconds('192.0.2.1', after(59.9))).toBe(1)
    expect(badKeys.waitSeconds('192.0.2.1', after(60))).toBe(0)
  })

  it('begins anew after a minute', () => {
    const badKeys = openFull()
    badKeys.countBad('192.0.2.1', after(60))
    expect(badKeys.waitSeconds('192.0.2.1', after(60))).toBe(0)
  })

  it('counts each address by itself', () => {
    expect(openFull().waitSeconds('192.0.2.2', after(1))).toBe(0)
  })

  it('lets nobody wait longer because the clock was set back', () => {
    expect(openFull().waitSeconds('192.0.2.1', after(-3_600))).toBe(0)
  })

  it('holds 10,000 addresses and no more', () => {
    const badKeys = openFull()
    for (let other = 0; other < 9_999; other++) badKeys.countBad(`other-${other}`, after(20))
    expect(badKeys.waitSeconds('192.0.2.1', after(20))).toBeGreaterThan(0)
    badKeys.countBad('one-more', after(20))
    expect(badKeys.waitSeconds('192.0.2.1', after(20))).toBe(0)
  })

  it('knows the digests of keys that were good lately, 10,000 at most', () => {
    const badKeys = openBadKeys()
    const digest = (number: number) => Uint8Array.of(number >> 8, number & 255)
    for (let number = 0; number < 10_001; number++) badKeys.countGood(digest(number))
    expect([0, 1, 10_000, 10_001].map((number) => badKeys.wasGood(digest(number)))).toEqual([
      false,
      true,
      true,
      false,
    ])
  })
})

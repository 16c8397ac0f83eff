import { describe, expect, test } from 'vitest'
import { stateOf } from '../../../src/core/access/apiKey.ts'
import { SCOPES, type Scope, requireScope } from '../../../src/core/access/caller.ts'
import { checkKeyRequest, type KeyRequest } from '../../../src/core/access/keyRequest.ts'
import { endOfOverlap, expiryOfSuccessor } from '../../../src/core/access/rotation.ts'
import { aKey } from '../../stores/aKey.ts'

const now = new Date('2026-01-31T12:00:00Z')
const day = (days: number) => new Date(now.getTime() + days * 86_400_000)

describe('a key', () => {
  test.each([
    ['active', 'without an end', {}],
    ['active', 'a moment before its end', { expiresAt: new Date(now.getTime() + 1) }],
    ['expired', 'at its end', { expiresAt: now }],
    ['revoked', 'once it is revoked, whatever its end', { revokedAt: now, expiresAt: day(1) }],
    ['revoked', 'once it is revoked, also after its end', { revokedAt: now, expiresAt: day(-1) }],
  ] as const)('is %s %s', (state, _, changes) => {
    expect(stateOf(aKey('k', changes), now)).toBe(state)
  })
})

describe('requireScope', () => {
  const caller = (...scopes: Scope[]) => ({ organisation: 'a', keyId: 'k', scopes })

  test('a scope lets its own things be done and no others; admin lets all', () => {
    for (const needed of SCOPES)
      for (const held of SCOPES) {
        const allowed = held === needed || held === 'admin'
        const outcome = () => requireScope(caller(held), needed)
        if (allowed) expect(outcome()).toEqual(caller(held))
        else
          expect(outcome).toThrow(
            expect.objectContaining({ code: 'scope-missing', details: { scope: needed } }),
          )
      }
  })

  test('without a key, a key is asked for', () => {
    expect(() => requireScope(null, 'admin')).toThrow(expect.objectContaining({ code: 'key-required' }))
  })
})

describe('a request for a key', () => {
  const secret: KeyRequest = { name: 'x', kind: 'secret', scopes: ['intake'] }
  const publishable: KeyRequest = { name: 'x', kind: 'publishable', origins: ['https://www.example.org'] }
  test.each<[string, KeyRequest, string[]]>([
    ['a secret key with a scope', secret, []],
    ['a publishable key with an origin', publishable, []],
    ['a publishable key that names its scope', { ...publishable, scopes: ['estimate'] }, []],
    ['a secret key without a scope', { ...secret, scopes: undefined }, ['/scopes required']],
    [
      'a secret key with an origin',
      { ...secret, origins: ['https://a.example'] },
      ['/origins not-for-secret-keys'],
    ],
    ['a publishable key without an origin', { ...publishable, origins: undefined }, ['/origins required']],
    [
      'a publishable key with another scope',
      { ...publishable, scopes: ['estimate', 'admin'] },
      ['/scopes not-publishable'],
    ],
    ['an end that is now', { ...secret, expiresAt: now }, ['/expiresAt in-the-past']],
    ['an end that is to come', { ...secret, expiresAt: day(1) }, []],
    [
      'everything wrong at once',
      { ...publishable, scopes: ['intake'], origins: [], expiresAt: day(-1) },
      ['/scopes not-publishable', '/origins required', '/expiresAt in-the-past'],
    ],
  ])('%s', (_, request, faults) => {
    expect(checkKeyRequest(request, now).map(({ pointer, code }) => `${pointer} ${code}`)).toEqual(faults)
  })
})

describe('a rotation', () => {
  test('the overlap is counted in hours from now', () => {
    expect(endOfOverlap({ overlapHours: 36 }, now)).toEqual(day(1.5))
    expect(endOfOverlap({ overlapHours: 0 }, now)).toEqual(now)
  })

  test('the successor ends when it is said, else after as long a term as the key had, else never', () => {
    const rotation = { overlapHours: 24 }
    const key = aKey('k', { issuedAt: day(-90), expiresAt: day(10) })
    expect(expiryOfSuccessor(key, { ...rotation, expiresAt: day(3) }, now)).toEqual(day(3))
    expect(expiryOfSuccessor(key, rotation, now)).toEqual(day(100))
    expect(expiryOfSuccessor(aKey('k'), rotation, now)).toBeNull()
  })
})

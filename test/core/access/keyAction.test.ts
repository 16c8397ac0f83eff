import { expect, test } from 'vitest'
import { keyAction } from '../../../src/core/access/keyAction.ts'
import { aKey } from '../../stores/aKey.ts'

const at = new Date('2026-01-31T12:00:00Z')
const digest = new Uint8Array(32)

test('the audit event of a new key has no state before it', () => {
  const after = aKey('k')
  expect(keyAction('api-key.issue', { before: null, after }, at, null)).toMatchObject({
    action: 'api-key.issue',
    subjectId: 'k',
    concerns: after.organisation,
    before: null,
  })
})

test('the audit event of a changed key has both states, and the digest in neither', () => {
  const before = { ...aKey('k'), digest }
  const after = { ...before, revokedAt: at }
  const event = keyAction('api-key.revoke', { before, after }, at, null)
  expect(event.before).toMatchObject({ id: 'k', revokedAt: null })
  expect(event.after).toMatchObject({ id: 'k', revokedAt: at })
  for (const state of [event.before, event.after]) expect(state).not.toHaveProperty('digest')
})

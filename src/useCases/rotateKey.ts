import { stateOf, withoutDigest } from '../core/access/apiKey.ts'
import { expiryFaults } from '../core/access/keyRequest.ts'
import { endOfOverlap, expiryOfSuccessor, type Rotation } from '../core/access/rotation.ts'
import { DomainError, FaultyInput, type Submitted } from '../core/fault.ts'
import { authorize, type Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { type IssuedKey, makeKey } from './issueKey.ts'
import { manageableKey } from './manageableKey.ts'

/**
 * Issues a successor that may do the same, and lets the key itself end when the overlap has passed.
 * @throws DomainError key-required, scope-missing, unknown-key, bootstrap-key, key-ended, key-rotated; FaultyInput
 */
export async function rotateKey(
  deps: Deps,
  sender: Sender,
  id: string,
  { value, faults }: Submitted<Rotation>,
): Promise<IssuedKey> {
  const origin = authorize(sender, 'admin')
  const now = deps.clock()
  const all = [...faults, ...expiryFaults(value?.expiresAt, now)]
  if (value === null || all.length > 0) throw new FaultyInput(all)
  const key = await manageableKey(deps, origin.caller, id)
  const state = stateOf(key, now)
  if (state !== 'active')
    throw new DomainError(
      'key-ended',
      `The key ${key.id} is ${state}, so it has no successor; issue a new key.`,
    )
  const { stored, text } = makeKey(deps, {
    ...withoutDigest(key),
    expiresAt: expiryOfSuccessor(key, value, now),
    issuedBy: origin.caller.keyId,
    rotatedFrom: key.id,
  })
  await deps.keyStore.rotate(stored, endOfOverlap(value, now), origin)
  deps.keyMemory.forget(key.id)
  return { key: withoutDigest(stored), text }
}

import { type ApiKey, type KeyState, type StoredKey, stateOf, withoutDigest } from '../core/access/apiKey.ts'
import { readKey } from '../core/access/keyText.ts'
import type { BadKeys } from './badKeys.ts'
import type { Deps } from './deps.ts'

/** Why a key was not taken. For the log alone: callers are told one and the same for all. */
export type KeyFault = 'no-key' | 'mistyped' | 'unknown' | 'wrong-secret' | Exclude<KeyState, 'active'>

export type Authentication =
  | { readonly key: ApiKey }
  /** `keyId` is the key that was named, where one was; it need not exist. */
  | { readonly fault: KeyFault; readonly keyId: string | null }
  /** Too many bad keys came from the address; this one was not looked at. */
  | { readonly waitSeconds: number }

const NO_DIGEST = new Uint8Array(32)

/**
 * Finds the key that a text is. Every text that is looked at costs the same: a digest, a look-up, a comparison.
 * @param text what was sent as a key, whatever it is
 * @param address where it came from
 */
export async function authenticate(
  deps: Deps,
  badKeys: BadKeys,
  { text, address }: { readonly text: string; readonly address: string },
): Promise<Authentication> {
  const now = deps.clock()
  const digest = deps.digests.of(text)
  const waitSeconds = badKeys.waitSeconds(address, now)
  if (waitSeconds > 0 && !badKeys.wasGood(digest)) return { waitSeconds }
  const found = await lookAt(deps, text, digest, now)
  if ('fault' in found) {
    badKeys.countBad(address, now)
    return found
  }
  badKeys.countGood(digest)
  deps.keyMemory.noteUse(found.key.id, now)
  return found
}

async function lookAt({ keyMemory, digests }: Deps, text: string, digest: Uint8Array, now: Date) {
  const read = readKey(text)
  const named = read && (await keyMemory.find(read.id))
  // The key of the operator's setting is the operator's choice, and need not have the form of the others.
  const stored: StoredKey | null = named ?? (await keyMemory.bootstrapKey())
  const fits = digests.equal(digest, stored?.digest ?? NO_DIGEST)
  if (stored === null || !fits)
    return { keyId: read?.id ?? null, fault: faultOf(read?.checksumFits, named !== null) }
  const state = stateOf(stored, now)
  return state === 'active' ? { key: withoutDigest(stored) } : { keyId: stored.id, fault: state }
}

function faultOf(checksumFits: boolean | undefined, isNamed: boolean): KeyFault {
  if (checksumFits === undefined) return 'no-key'
  if (!checksumFits) return 'mistyped'
  return isNamed ? 'wrong-secret' : 'unknown'
}

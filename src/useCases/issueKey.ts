import { type ApiKey, type StoredKey, withoutDigest } from '../core/access/apiKey.ts'
import { checkKeyRequest, type KeyRequest } from '../core/access/keyRequest.ts'
import { writeKey } from '../core/access/keyText.ts'
import { DomainError, FaultyInput, type Submitted } from '../core/fault.ts'
import { authorize, isWithinReach, type Sender } from './authorize.ts'
import type { Deps } from './deps.ts'

/** A key as it is shown once, when it is made: `text` is the key itself and is not stored anywhere. */
export interface IssuedKey {
  readonly key: ApiKey
  readonly text: string
}

/** What is decided of a new key before it is written. */
export type NewKey = Omit<ApiKey, 'id' | 'issuedAt' | 'revokedAt' | 'lastUsedAt'>

/**
 * Issues a key of the caller's organisation, or, by the operator's admins, of any.
 * @throws DomainError key-required, scope-missing; FaultyInput
 */
export async function issueKey(
  deps: Deps,
  sender: Sender,
  submitted: Submitted<KeyRequest>,
): Promise<IssuedKey> {
  const origin = authorize(sender, 'admin')
  const { value } = submitted
  const faults = [...submitted.faults, ...(value ? checkKeyRequest(value, deps.clock()) : [])]
  if (value === null || faults.length > 0) throw new FaultyInput(faults)
  const organisation = value.organisation ?? origin.caller.organisation
  if (!isWithinReach(origin.caller, organisation)) throw unknownOrganisation(organisation)
  const made = makeKey(deps, {
    organisation,
    kind: value.kind,
    name: value.name,
    scopes: value.scopes ?? ['estimate'],
    origins: value.origins ?? [],
    expiresAt: value.expiresAt ?? null,
    bootstrap: false,
    issuedBy: origin.caller.keyId,
    rotatedFrom: null,
  })
  try {
    await deps.keyStore.issue(made.stored, origin)
    deps.keyMemory.forget(made.stored.id)
  } catch (error) {
    throw error instanceof DomainError && error.code === 'unknown-organisation'
      ? unknownOrganisation(organisation)
      : error
  }
  return { key: withoutDigest(made.stored), text: made.text }
}

/** Another's organisation is answered like one that does not exist. */
const unknownOrganisation = (code: string) =>
  new FaultyInput([
    {
      pointer: '/organisation',
      code: 'unknown-organisation',
      message: `There is no organisation "${code}".`,
    },
  ])

/** Writes a new key, and what is stored of it. */
export function makeKey(deps: Deps, wanted: NewKey): { readonly text: string; readonly stored: StoredKey } {
  const { id, text } = writeKey(wanted.kind, deps.random)
  const stored: StoredKey = {
    ...wanted,
    id,
    issuedAt: deps.clock(),
    revokedAt: null,
    lastUsedAt: null,
    digest: deps.digests.of(text),
  }
  return { text, stored }
}

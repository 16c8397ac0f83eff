import type { ApiKey } from '../core/access/apiKey.ts'
import type { KeyFilter, KeyPlace } from '../stores/keyStore.ts'
import type { Window } from '../stores/window.ts'
import { authorize, reachOf, type Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { type Part, partOf } from './part.ts'

export type { KeyFilter, KeyPlace } from '../stores/keyStore.ts'

/**
 * Keys without their secrets, newest first: of the caller's organisation, or, to the operator's admins, of all.
 * @throws DomainError key-required, scope-missing
 */
export async function listKeys(
  { keyStore }: Deps,
  sender: Sender,
  asked: KeyFilter,
  window: Window<KeyPlace>,
): Promise<Part<ApiKey>> {
  const filter = reachOf(authorize(sender, 'admin').caller, asked.organisation)
  return partOf(window, async (wider) => (filter ? keyStore.list(filter, wider) : []))
}

/** How many keys there are in such a list. @throws DomainError key-required, scope-missing */
export async function countKeys({ keyStore }: Deps, sender: Sender, asked: KeyFilter): Promise<number> {
  const filter = reachOf(authorize(sender, 'admin').caller, asked.organisation)
  return filter ? keyStore.count(filter) : 0
}

import type { ApiKey } from '../core/access/apiKey.ts'
import type { Caller } from '../core/access/caller.ts'
import { DomainError } from '../core/fault.ts'
import { isWithinReach } from './authorize.ts'
import type { Deps } from './deps.ts'

/**
 * A key that the caller may see; that of another organisation is answered like one that does not exist.
 * @throws DomainError unknown-key
 */
export async function visibleKey(deps: Deps, caller: Caller, id: string): Promise<ApiKey> {
  const key = await deps.keyStore.find(id)
  if (key === null || !isWithinReach(caller, key.organisation))
    throw new DomainError('unknown-key', `There is no key with the id "${id.slice(0, 100)}".`)
  return key
}

/**
 * The same for a key that is to be changed, which the key of the operator's setting cannot be.
 * @throws DomainError unknown-key, bootstrap-key
 */
export async function manageableKey(deps: Deps, caller: Caller, id: string): Promise<ApiKey> {
  const key = await visibleKey(deps, caller, id)
  if (!key.bootstrap) return key
  throw new DomainError(
    'bootstrap-key',
    'This is the key of the setting BOOTSTRAP_ADMIN_KEY. Change or remove the setting, and start the service again.',
  )
}

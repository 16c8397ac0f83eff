import type { ApiKey } from '../core/access/apiKey.ts'
import { authorize, type Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { manageableKey } from './manageableKey.ts'

/**
 * Ends a key for good: at once in this process, within a second in others. One that is revoked already stays so.
 * @throws DomainError key-required, scope-missing, unknown-key, bootstrap-key
 */
export async function revokeKey(deps: Deps, sender: Sender, id: string): Promise<ApiKey> {
  const origin = authorize(sender, 'admin')
  const key = await manageableKey(deps, origin.caller, id)
  const revoked = await deps.keyStore.revoke(key.id, deps.clock(), origin)
  deps.keyMemory.forget(key.id)
  return revoked
}

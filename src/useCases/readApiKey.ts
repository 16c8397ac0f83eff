import type { ApiKey } from '../core/access/apiKey.ts'
import { authorize, type Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { visibleKey } from './manageableKey.ts'

/** @throws DomainError key-required, scope-missing, unknown-key */
export async function readApiKey(deps: Deps, sender: Sender, id: string): Promise<ApiKey> {
  return visibleKey(deps, authorize(sender, 'admin').caller, id)
}

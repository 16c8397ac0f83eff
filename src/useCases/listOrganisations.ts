import type { Organisation } from '../core/access/organisation.ts'
import { authorizeOperator, type Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { type Part, partOf } from './part.ts'

/**
 * Organisations in the order of their codes. For the operator's admins.
 * @throws DomainError key-required, scope-missing, operator-only
 */
export async function listOrganisations(
  { keyStore }: Deps,
  sender: Sender,
  page: { readonly after?: string | undefined; readonly limit: number },
): Promise<Part<Organisation>> {
  authorizeOperator(sender, 'admin')
  return partOf({ ...page, keep: 'first' }, ({ after, limit }) => keyStore.organisations({ after, limit }))
}

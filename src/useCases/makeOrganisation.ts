import type { Organisation } from '../core/access/organisation.ts'
import { FaultyInput, type Submitted } from '../core/fault.ts'
import { authorizeOperator, type Sender } from './authorize.ts'
import type { Deps } from './deps.ts'

/**
 * Makes an organisation, which then can be given keys. For the operator's admins.
 * @throws DomainError key-required, scope-missing, operator-only, organisation-exists; FaultyInput
 */
export async function makeOrganisation(
  deps: Deps,
  sender: Sender,
  { value, faults }: Submitted<Pick<Organisation, 'code' | 'name'>>,
): Promise<Organisation> {
  const origin = authorizeOperator(sender, 'admin')
  if (value === null || faults.length > 0) throw new FaultyInput(faults)
  const organisation = { code: value.code, name: value.name, madeAt: deps.clock() }
  await deps.keyStore.addOrganisation(organisation, origin)
  return organisation
}

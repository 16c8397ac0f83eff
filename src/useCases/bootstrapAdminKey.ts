import { OPERATOR } from '../core/access/organisation.ts'
import { DomainError } from '../core/fault.ts'
import type { Deps } from './deps.ts'
import { makeKey, type NewKey } from './issueKey.ts'

const ADMIN: NewKey = {
  organisation: OPERATOR,
  kind: 'secret',
  name: 'First admin key',
  scopes: ['admin'],
  origins: [],
  bootstrap: false,
  issuedBy: null,
  rotatedFrom: null,
  expiresAt: null,
}

/**
 * Sees at each start that the operator can get in: makes the operator's organisation where there is none, and takes the
 * key of the setting over, in place of one that it had before. Where it has none and no key was ever issued, it issues one.
 * @param chosen the key of the setting BOOTSTRAP_ADMIN_KEY
 * @returns the key that was issued now, to be shown once; null where none was
 */
export async function bootstrapAdminKey(deps: Deps, chosen: string | null): Promise<string | null> {
  await makeOperator(deps)
  const { stored, text } = makeKey(deps, ADMIN)
  if (chosen === null) {
    await deps.keyStore.setBootstrapKey(null, deps.clock())
    return (await deps.keyStore.issueFirst(stored)) ? text : null
  }
  const name = 'Key of the setting BOOTSTRAP_ADMIN_KEY'
  const bootstrap = { ...stored, name, bootstrap: true, digest: deps.digests.of(chosen) }
  await deps.keyStore.setBootstrapKey(bootstrap, deps.clock())
  return null
}

/** Another process may make it at the same moment, and an earlier start has made it. */
async function makeOperator(deps: Deps): Promise<void> {
  const operator = { code: OPERATOR, name: 'The operator of this service', madeAt: deps.clock() }
  try {
    await deps.keyStore.addOrganisation(operator, null)
  } catch (error) {
    if (!(error instanceof DomainError && error.code === 'organisation-exists')) throw error
  }
}

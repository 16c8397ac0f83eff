import { DomainError } from '../core/fault.ts'
import type { ReferenceData } from '../core/reference/referenceData.ts'
import type { Deps } from './deps.ts'

/**
 * Tariffs and emission factors at a revision, or the newest where none is named.
 * @throws DomainError unknown-reference-revision
 */
export async function referenceAt(
  { referenceMemory }: Deps,
  revision: number | undefined,
): Promise<ReferenceData> {
  const current = referenceMemory.current()
  if (revision === undefined) return current
  const found = await referenceMemory.at(revision)
  if (found && found.revision > 0) return found
  throw new DomainError(
    'unknown-reference-revision',
    `There is no revision ${revision} of tariffs and emission factors; the newest is ${current.revision}. Leave it out to use the newest.`,
    { newest: current.revision },
  )
}

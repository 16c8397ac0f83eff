import type { Revision } from '../core/catalogue/revision.ts'
import { changesOfRevision, type ReferenceChange } from '../core/reference/referenceChange.ts'
import type { Deps } from './deps.ts'
import { referenceAt } from './referenceAt.ts'

/** What a revision of tariffs and emission factors says of itself. @throws DomainError unknown-reference-revision */
export async function readReferenceRevision(deps: Deps, number: number): Promise<Revision> {
  const { revision } = await referenceAt(deps, number)
  const [found] = await deps.referenceStore.revisions(revision, revision)
  return found!
}

/** What it changed, by kind and in the order of the codes. @throws DomainError unknown-reference-revision */
export async function readReferenceChanges(deps: Deps, number: number): Promise<readonly ReferenceChange[]> {
  return changesOfRevision(await deps.referenceMemory.at(number - 1), await referenceAt(deps, number))
}

import type { Catalogue } from '../core/catalogue/catalogue.ts'
import type { Deps } from './deps.ts'
import { unknownRevision } from './unknownRevision.ts'

/**
 * The shared catalogue at a revision, or the newest where none is named. What a caller asks about is answered with
 * callersCatalogue.ts instead.
 * @throws DomainError unknown-revision
 */
export async function catalogueOf(deps: Deps, revision: number | undefined): Promise<Catalogue> {
  const current = deps.catalogueMemory.current()
  if (revision === undefined || revision === current.revision) return current
  const past = await deps.catalogueMemory.at(revision)
  if (past) return past
  throw unknownRevision(revision, current.revision)
}

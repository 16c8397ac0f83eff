import type { Catalogue } from '../core/catalogue/catalogue.ts'
import { compareCatalogues } from '../core/catalogue/compareCatalogues.ts'
import { DomainError } from '../core/fault.ts'
import type { Deps } from './deps.ts'

/** So many edits, and so many categories, are shown to whoever is late. */
const SHOWN = 100

/**
 * Sees that an edit of the catalogue as a whole was made by somebody who knows all of it.
 * @param basedOn catalogue revisions that the editor knows, one of which must be the newest; null where none is named
 * @throws DomainError precondition-required; stale-revision, which shows what was edited meanwhile
 */
export async function basedOnNewest(
  deps: Deps,
  newest: Catalogue,
  basedOn: readonly number[] | null,
): Promise<void> {
  if (basedOn?.includes(newest.revision)) return
  if (basedOn === null)
    throw new DomainError(
      'precondition-required',
      "Name the catalogue revision that this is based on, so that nobody's edit is overwritten unseen.",
    )
  const [known] = basedOn
  const past = known === undefined ? null : await deps.catalogueMemory.at(known)
  const edits = past
    ? await deps.catalogueStore.revisions(
        Math.max(past.revision + 1, newest.revision - SHOWN + 1),
        newest.revision,
      )
    : null
  const changes = past
    ? compareCatalogues(past, newest)
        .slice(0, SHOWN)
        .map(({ code, kind }) => ({ code, kind }))
    : null
  throw new DomainError(
    'stale-revision',
    `This is based on ${known === undefined ? 'another state' : `revision ${known}`} of the catalogue, but the newest revision is ` +
      `${newest.revision}. Look at what was edited, and begin from there.`,
    { basedOn: known ?? null, newest: newest.revision, edits, changes },
  )
}

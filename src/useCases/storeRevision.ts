import type { Origin } from '../core/access/caller.ts'
import type { Catalogue } from '../core/catalogue/catalogue.ts'
import type { Category } from '../core/catalogue/category.ts'
import type { Revision, RevisionAction } from '../core/catalogue/revision.ts'
import { DomainError } from '../core/fault.ts'
import type { Deps } from './deps.ts'

export interface Edit {
  readonly action: RevisionAction
  readonly origin: Origin
  readonly reason: string
  /**
   * The categories as they are to become, looked at the newest catalogue; none where nothing would change. It is asked again
   * where another process was faster, so it is where everything is checked that must still hold.
   */
  readonly decide: (newest: Catalogue) => Promise<readonly Category[]> | readonly Category[]
  readonly onProgress?: (done: number, total: number) => void
}

export interface StoredEdit {
  /** Null where nothing changed, so that no revision was made. */
  readonly revision: Revision | null
  /** The catalogue revision that holds the result. */
  readonly catalogueRevision: number
}

/** Each lost race means that somebody else's edit was stored; so many in a row mean that something is wrong. */
const ATTEMPTS = 100

/**
 * Stores an edit as one new revision, decided on what is stored then, however many edit at once: none is overwritten that
 * `decide` has not seen. The catalogue in memory holds it when this is done.
 * @throws whatever `decide` throws
 */
export function storeRevision(deps: Deps, edit: Edit): Promise<StoredEdit> {
  return deps.catalogueMemory.inTurn(async () => {
    for (let attempt = 1; ; attempt++) {
      await deps.catalogueMemory.refresh()
      const newest = deps.catalogueMemory.current()
      const changed = await edit.decide(newest)
      if (changed.length === 0) return { revision: null, catalogueRevision: newest.revision }
      const revision = await append(deps, newest, changed, edit, attempt)
      if (revision === null) continue
      await deps.catalogueMemory.refresh()
      return { revision, catalogueRevision: revision.number }
    }
  })
}

/** Null where another process stored a revision first, and it is worth trying again. */
async function append(
  { catalogueStore, clock }: Deps,
  newest: Catalogue,
  changed: readonly Category[],
  { action, origin, reason, onProgress }: Edit,
  attempt: number,
): Promise<Revision | null> {
  try {
    const note = { action, origin, reason, at: clock() }
    return await catalogueStore.append(newest.revision, changed, note, onProgress)
  } catch (error) {
    if (!(error instanceof DomainError) || error.code !== 'stale-revision') throw error
    if (attempt < ATTEMPTS) return null
    throw new Error(`An edit came too late ${ATTEMPTS} times in a row.`, { cause: error })
  }
}

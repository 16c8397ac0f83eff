import type { Origin } from '../core/access/caller.ts'
import type { Revision, RevisionAction, RevisionNote } from '../core/catalogue/revision.ts'
import { DomainError } from '../core/fault.ts'
import type { RevisionMemory } from './revisionMemory.ts'

type OnProgress = (done: number, total: number) => void

export interface Edit<State, Changed> {
  readonly action: RevisionAction
  readonly origin: Origin
  readonly reason: string
  /**
   * What is to become of it, looked at the newest state; nothing where nothing would change. It is asked again where
   * another process was faster, so it is where everything is checked that must still hold.
   */
  readonly decide: (newest: State) => Promise<readonly Changed[]> | readonly Changed[]
  readonly onProgress?: OnProgress
}

/** What is edited: as it is held in memory, and how a revision of it is stored. */
export interface EditTarget<State, Changed> {
  readonly memory: RevisionMemory<State>
  readonly store: {
    append(
      basedOn: number,
      changed: readonly Changed[],
      note: RevisionNote,
      onProgress?: OnProgress,
    ): Promise<Revision>
  }
  readonly clock: () => Date
}

/** Each lost race means that somebody else's edit was stored; so many in a row mean that something is wrong. */
const ATTEMPTS = 100

/**
 * Stores an edit as one new revision, decided on what is stored then, however many edit at once: none is overwritten that
 * `decide` has not seen. The memory holds it when this is done.
 * @returns the revision that it made, null where nothing changed; and the number of the one that holds the result
 * @throws whatever `decide` throws
 */
export function storeEdit<State extends { readonly revision: number }, Changed>(
  target: EditTarget<State, Changed>,
  edit: Edit<State, Changed>,
): Promise<{ readonly revision: Revision | null; readonly newest: number }> {
  const { memory } = target
  return memory.inTurn(async () => {
    for (let attempt = 1; ; attempt++) {
      await memory.refresh()
      const newest = memory.current()
      const changed = await edit.decide(newest)
      if (changed.length === 0) return { revision: null, newest: newest.revision }
      const revision = await append(target, newest.revision, changed, edit, attempt)
      if (revision === null) continue
      await memory.refresh()
      return { revision, newest: revision.number }
    }
  })
}

/** Null where another process stored a revision first, and it is worth trying again. */
async function append<State, Changed>(
  { store, clock }: EditTarget<State, Changed>,
  basedOn: number,
  changed: readonly Changed[],
  { action, origin, reason, onProgress }: Edit<State, Changed>,
  attempt: number,
): Promise<Revision | null> {
  try {
    return await store.append(basedOn, changed, { action, origin, reason, at: clock() }, onProgress)
  } catch (error) {
    if (!(error instanceof DomainError) || error.code !== 'stale-revision') throw error
    if (attempt < ATTEMPTS) return null
    throw new Error(`An edit came too late ${ATTEMPTS} times in a row.`, { cause: error })
  }
}

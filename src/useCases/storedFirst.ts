import type { Revision, RevisionNote } from '../core/catalogue/revision.ts'
import { DomainError } from '../core/fault.ts'

/**
 * Stores what the service is shipped with, as revision 1 of an empty store.
 * @returns false where another process stored revision 1 first
 */
export async function storedFirst<Changed>(
  store: { append(basedOn: number, changed: readonly Changed[], note: RevisionNote): Promise<Revision> },
  changed: readonly Changed[],
  { reason, at }: Pick<RevisionNote, 'reason' | 'at'>,
): Promise<boolean> {
  try {
    await store.append(0, changed, { action: 'seed', origin: null, reason, at })
    return true
  } catch (error) {
    if (error instanceof DomainError && error.code === 'stale-revision') return false
    throw error
  }
}

import { inTurn } from '../core/inTurn.ts'
import { lastUsed } from './lastUsed.ts'
import { oneForAll } from './oneForAll.ts'

/** Something that is stored revision by revision, as it is held in memory, so that no estimate waits for the database. */
export interface RevisionMemory<T> {
  /** The newest revision that this process has seen. */
  current(): T
  /** A past revision; read from the store once and kept. Null where there is none. */
  at(revision: number): Promise<T | null>
  /** Looks at the store now, and takes over a newer revision. */
  refresh(): Promise<void>
  /** Does one edit of this process after the other, so that they don't make each other stale. */
  inTurn<R>(edit: () => Promise<R>): Promise<R>
}

/** Where revisions are read from. */
export interface RevisionSource<T> {
  /** What there is before the first revision; its number is 0. */
  readonly empty: T
  latest(): Promise<number>
  /** Null where there is no such revision. */
  load(revision: number): Promise<T | null>
  /** What there is at `latest`, by way of what is held already. */
  newer(held: T, latest: number): Promise<T | null>
}

export interface RevisionMemoryOptions {
  /** So many past revisions are held, those that were last asked for. */
  readonly pastRevisions?: number
}

/** Loads the newest revision and holds it; an empty store gives the empty one. */
export async function openRevisionMemory<T extends { readonly revision: number }>(
  source: RevisionSource<T>,
  { pastRevisions = 16 }: RevisionMemoryOptions = {},
): Promise<RevisionMemory<T>> {
  let current = source.empty
  const past = lastUsed(pastRevisions, (revision: number) => source.load(revision))
  const refresh = oneForAll(async () => {
    const latest = await source.latest()
    if (latest <= current.revision) return
    const newer = await source.newer(current, latest)
    if (newer) current = newer
  })
  await refresh()
  return {
    current: () => current,
    at: async (revision) => (revision === current.revision ? current : past(revision)),
    refresh,
    inTurn: inTurn(),
  }
}

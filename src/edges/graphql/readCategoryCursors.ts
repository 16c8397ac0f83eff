import { DomainError, type Fault } from '../../core/fault.ts'
import type { AskedRevisions } from '../../useCases/callersCatalogue.ts'
import { type CategoryCursor, readCursor } from '../categoryCursor.ts'

type Filter = Parameters<typeof readCursor>[1] & Parameters<typeof readCursor>[2]

interface Texts {
  readonly after?: string | undefined
  readonly before?: string | undefined
}

interface Places {
  /** The codes that the cursors stand for. */
  readonly keys: Texts
  /** The revisions that they were handed out from, which the page then reads too. */
  readonly revisions: AskedRevisions
  /** Cursors that were not made here or belong to another filter, caller or revision. */
  readonly faults: readonly Fault[]
}

/** What `after` and `before` stand for. They are REST's cursors: one that either edge gave out is good for both. */
export function readCategoryCursors(texts: Texts, filter: Filter): Places {
  const faults: Fault[] = []
  const read = (name: keyof Texts, asked: Filter): CategoryCursor | null => {
    const text = texts[name]
    if (text === undefined) return null
    try {
      return readCursor(text, filter, asked)
    } catch (error) {
      if (!(error instanceof DomainError)) throw error
      faults.push({ pointer: `/${name}`, code: error.code, message: error.message })
      return null
    }
  }
  const after = read('after', filter)
  const { catalogueRevision = after?.revision, overlayRevision = after?.overlay } = filter
  const before = read('before', { ...filter, catalogueRevision, overlayRevision })
  const from = after ?? before
  return {
    keys: { after: after?.after, before: before?.after },
    revisions: { catalogueRevision: from?.revision, overlayRevision: from?.overlay },
    faults,
  }
}

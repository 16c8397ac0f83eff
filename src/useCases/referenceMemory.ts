import { type ReferenceData, referenceDataOf } from '../core/reference/referenceData.ts'
import type { ReferenceStore } from '../stores/referenceStore.ts'
import { openRevisionMemory, type RevisionMemory, type RevisionMemoryOptions } from './revisionMemory.ts'

/** Tariffs and emission factors by their revisions, held in memory; an empty store gives none, revision 0. */
export const openReferenceMemory = (
  store: ReferenceStore,
  options: RevisionMemoryOptions = {},
): Promise<RevisionMemory<ReferenceData>> =>
  openRevisionMemory<ReferenceData>(
    {
      empty: referenceDataOf(0, []),
      latest: () => store.latestRevision(),
      load: (revision) => store.dataAt(revision),
      newer: (_held, latest) => store.dataAt(latest),
    },
    options,
  )

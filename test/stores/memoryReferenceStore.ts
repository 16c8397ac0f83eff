import { authorOf, type Revision } from '../../src/core/catalogue/revision.ts'
import { DomainError } from '../../src/core/fault.ts'
import { type ReferenceData, referenceDataOf, statesOf } from '../../src/core/reference/referenceData.ts'
import type { ReferenceStore } from '../../src/stores/referenceStore.ts'

/** A store of tariffs and emission factors that keeps everything in memory, for tests of what stands on a store. */
export function memoryReferenceStore(): ReferenceStore {
  const states: ReferenceData[] = []
  const made: Revision[] = []
  return {
    latestRevision: async () => states.length,
    dataAt: async (revision) => states[revision - 1] ?? null,
    revisions: async (oldest, newest) =>
      made.filter(({ number }) => number >= oldest && number <= newest).reverse(),
    append: async (basedOn, changed, note) => {
      if (basedOn !== states.length)
        throw new DomainError('stale-revision', `Based on ${basedOn}, but the newest is ${states.length}.`)
      const name = ({ kind, content }: (typeof changed)[number]) => `${kind} ${content.code}`
      const names = new Set(changed.map(name))
      if (names.size < changed.length) throw new Error('One entry twice in an edit.')
      const number = states.length + 1
      const kept = statesOf(states.at(-1) ?? referenceDataOf(0, [])).filter(
        ({ entry }) => !names.has(name(entry)),
      )
      const added = structuredClone(changed).map((entry) => ({ entry, revision: number }))
      states.push(referenceDataOf(number, [...kept, ...added]))
      const { action, reason, at } = note
      const revision = { number, action, author: authorOf(note), reason, at }
      made.push(revision)
      return revision
    },
  }
}

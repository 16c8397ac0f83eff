import { type Catalogue, catalogueOf, laterCatalogue } from '../../src/core/catalogue/catalogue.ts'
import { authorOf, type Revision } from '../../src/core/catalogue/revision.ts'
import { DomainError } from '../../src/core/fault.ts'
import type { CatalogueStore } from '../../src/stores/catalogueStore.ts'

/** A catalogue store that keeps everything in memory, for tests of what stands on a store. */
export function memoryCatalogueStore(): CatalogueStore {
  const catalogues: Catalogue[] = []
  const made: Revision[] = []
  const at = (revision: number) => catalogues[revision - 1]
  const statesIn = (revision: number) =>
    [...(at(revision)?.categories.values() ?? [])].filter(
      ({ code }) => at(revision)!.changedIn.get(code) === revision,
    )
  return {
    latestRevision: async () => catalogues.length,
    catalogueAt: async (revision) => at(revision) ?? null,
    statesBetween: async (after, upTo) => {
      const { categories, changedIn } = at(upTo) ?? catalogueOf(0, [])
      return [...categories.values()]
        .map((category) => ({ category, revision: changedIn.get(category.code)! }))
        .filter(({ revision }) => revision > after)
    },
    revisions: async (oldest, newest) =>
      made.filter(({ number }) => number >= oldest && number <= newest).reverse(),
    changesIn: async (revision, { after = '', before, limit, keep }) => {
      const between = statesIn(revision).filter(
        ({ code }) => code > after && (before === undefined || code < before),
      )
      const kept = keep === 'first' ? between.slice(0, limit) : between.slice(-limit)
      return (limit === 0 ? [] : kept).map((state) => ({
        before: at(revision - 1)?.categories.get(state.code) ?? null,
        after: state,
      }))
    },
    countChangesIn: async (revision) => statesIn(revision).length,
    append: async (basedOn, changed, note, onProgress) => {
      if (basedOn !== catalogues.length)
        throw new DomainError(
          'stale-revision',
          `Based on ${basedOn}, but the newest is ${catalogues.length}.`,
        )
      if (new Set(changed.map(({ code }) => code)).size < changed.length)
        throw new Error('One code twice in an edit.')
      const number = catalogues.length + 1
      const states = structuredClone(changed).map((category) => ({ category, revision: number }))
      catalogues.push(laterCatalogue(at(basedOn) ?? catalogueOf(0, []), number, states))
      const revision = {
        number,
        action: note.action,
        author: authorOf(note),
        reason: note.reason,
        at: note.at,
      }
      made.push(revision)
      onProgress?.(changed.length, changed.length)
      return revision
    },
  }
}

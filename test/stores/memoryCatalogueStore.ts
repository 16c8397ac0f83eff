import { type Catalogue, catalogueOf } from '../../src/core/catalogue/catalogue.ts'
import type { Category } from '../../src/core/catalogue/category.ts'
import { DomainError } from '../../src/core/fault.ts'
import type { CatalogueStore, RevisionNote } from '../../src/stores/catalogueStore.ts'

/** A catalogue store that keeps everything in memory, for tests of what stands on a store. */
export function memoryCatalogueStore(): CatalogueStore {
  const revisions: Catalogue[] = []
  const categoriesNow = () => revisions.at(-1)?.categories.values() ?? []
  return {
    latestRevision: async () => revisions.length,
    catalogueAt: async (revision) => revisions[revision - 1] ?? null,
    append: async (basedOn: number, changed: readonly Category[], note: RevisionNote) => {
      if (basedOn !== revisions.length)
        throw new DomainError('stale-revision', `Based on ${basedOn}, but the newest is ${revisions.length}.`)
      if (new Set(changed.map(({ code }) => code)).size < changed.length)
        throw new Error('One code twice in an edit.')
      const number = revisions.length + 1
      revisions.push(catalogueOf(number, [...categoriesNow(), ...structuredClone(changed)]))
      return { number, author: note.author, reason: note.reason, at: note.at }
    },
  }
}

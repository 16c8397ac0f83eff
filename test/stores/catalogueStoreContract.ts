import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import {
  GROUPS,
  type Category,
  KEEP_POWERED_REASONS,
  MODES,
  PROVENANCE_KINDS,
} from '../../src/core/catalogue/category.ts'
import type { CatalogueStore } from '../../src/stores/catalogueStore.ts'
import { aCategory } from './aCategory.ts'
import { aNote as note } from './aNote.ts'
import { catalogueHistoryContract } from './catalogueHistoryContract.ts'

export interface OpenedStore {
  readonly store: CatalogueStore
  /** A second store over the same data, as another process of the service has one. */
  readonly second: CatalogueStore
  close(): Promise<void>
}

/** What every catalogue store must do, whatever it keeps the catalogue in. `open` gives an empty one. */
export function catalogueStoreContract(name: string, open: () => Promise<OpenedStore>): void {
  describe(`the catalogue store ${name}`, () => {
    let opened: OpenedStore
    let store: CatalogueStore
    beforeEach(async () => {
      opened = await open()
      store = opened.store
    })
    afterEach(() => opened.close())

    const contentsAt = async (revision: number) => [
      ...((await store.catalogueAt(revision))?.categories.values() ?? []),
    ]

    it('is empty at first: revision 0, which is no revision that can be read', async () => {
      expect(await store.latestRevision()).toBe(0)
      expect(await store.catalogueAt(0)).toBeNull()
      expect(await store.catalogueAt(1)).toBeNull()
    })

    it('numbers revisions from 1 without a gap, and gives back what the edit said of itself', async () => {
      const author = { organisation: 'an-organisation', keyId: 'a-key' }
      const { action, reason, at } = note
      const said = { action, author, reason, at }
      expect(await store.append(0, [aCategory('a')], note)).toEqual({ number: 1, ...said })
      expect(await store.append(1, [aCategory('b')], note)).toEqual({ number: 2, ...said })
      expect(await store.latestRevision()).toBe(2)
    })

    it('keeps every revision as it was, whatever is edited later', async () => {
      const [a, b] = [aCategory('a'), aCategory('b')]
      const [renamed, retired, c] = [
        aCategory('a', { name: 'Renamed' }),
        aCategory('b', { retired: true }),
        aCategory('c'),
      ]
      await store.append(0, [a, b], note)
      await store.append(1, [renamed], note)
      await store.append(2, [c, retired], note)
      await store.append(3, [a], note)
      expect(await contentsAt(1)).toEqual([a, b])
      expect(await contentsAt(2)).toEqual([renamed, b])
      expect(await contentsAt(3)).toEqual([renamed, retired, c])
      expect(await contentsAt(4)).toEqual([a, retired, c])
    })

    it('takes an edit that changes no category, which is a revision like the one before', async () => {
      await store.append(0, [aCategory('a')], note)
      await store.append(1, [], note)
      expect(await contentsAt(2)).toEqual(await contentsAt(1))
      expect((await store.catalogueAt(2))?.revision).toBe(2)
    })

    it('has no catalogue for a number that is no revision', async () => {
      await store.append(0, [aCategory('a')], note)
      for (const none of [2, 0, -1, 0.5, 1.5, NaN, Infinity, 2 ** 31, Number.MAX_SAFE_INTEGER])
        expect(await store.catalogueAt(none), String(none)).toBeNull()
    })

    it('gives back the very bytes of any category', async () => {
      await fc.assert(
        fc.asyncProperty(
          fc.uniqueArray(anyCategory, { selector: ({ code }) => code, minLength: 1 }),
          async (given) => {
            const { number } = await store.append(await store.latestRevision(), given, note)
            const read = (await store.catalogueAt(number))?.categories
            expect(given.map(({ code }) => JSON.stringify(read?.get(code)))).toEqual(
              given.map((one) => JSON.stringify(one)),
            )
          },
        ),
        { numRuns: 30 },
      )
    })

    it('keeps no hold of the objects that it is given', async () => {
      const given = structuredClone(aCategory('a')) as { name: string } & Category
      await store.append(0, [given], note)
      given.name = 'Changed afterwards'
      expect(await contentsAt(1)).toEqual([aCategory('a')])
    })

    it('refuses an edit that is based on any revision but the newest, and stores nothing of it', async () => {
      await store.append(0, [aCategory('a')], note)
      await store.append(1, [aCategory('b')], note)
      for (const basedOn of [0, 1, 3])
        await expect(store.append(basedOn, [aCategory('c')], note)).rejects.toMatchObject({
          code: 'stale-revision',
        })
      expect(await store.latestRevision()).toBe(2)
      expect(await contentsAt(2)).toEqual([aCategory('a'), aCategory('b')])
    })

    it('stores all of an edit or nothing', async () => {
      await expect(store.append(0, [aCategory('a'), aCategory('b'), aCategory('a')], note)).rejects.toThrow()
      expect(await store.latestRevision()).toBe(0)
      await store.append(0, [aCategory('c')], note)
      expect(await contentsAt(1)).toEqual([aCategory('c')])
    })

    it('lets exactly one of several edits at once win, and tells the others that they are stale', async () => {
      const editors = [store, opened.second, store, opened.second, store]
      const outcomes = await Promise.allSettled(
        editors.map((editor, index) => editor.append(0, [aCategory(`from-${index}`)], note)),
      )
      const lost = outcomes.filter((outcome) => outcome.status === 'rejected')
      expect(lost.map(({ reason }) => (reason as { code: string }).code)).toEqual(
        Array(4).fill('stale-revision'),
      )
      const winner = outcomes.findIndex(({ status }) => status === 'fulfilled')
      expect(await contentsAt(1)).toEqual([aCategory(`from-${winner}`)])
      expect(await store.latestRevision()).toBe(1)
    })

    it('loses no edit of editors at once who try again when they are stale', async () => {
      const codes = Array.from({ length: 40 }, (_, index) => `edit-${String(index).padStart(2, '0')}`)
      const editors = Array.from({ length: 8 }, (_, index) => (index % 2 === 0 ? store : opened.second))
      await Promise.all(
        editors.map(async (editor, index) => {
          for (const code of codes.slice(index * 5, index * 5 + 5)) await editStubbornly(editor, code)
        }),
      )
      expect(await store.latestRevision()).toBe(40)
      expect((await contentsAt(40)).map(({ code }) => code)).toEqual(codes)
      for (let revision = 1; revision <= 40; revision++)
        expect(await contentsAt(revision)).toHaveLength(revision)
    })

    catalogueHistoryContract(() => store)

    it('takes 10,000 categories in one edit', async () => {
      const many = Array.from({ length: 10_000 }, (_, index) => aCategory(`c-${index}`))
      await store.append(0, many, note)
      const read = (await store.catalogueAt(1))?.categories
      expect(read?.size).toBe(10_000)
      expect(many.filter((one) => JSON.stringify(read?.get(one.code)) !== JSON.stringify(one))).toEqual([])
    })
  })
}

async function editStubbornly(store: CatalogueStore, code: string): Promise<void> {
  for (;;) {
    try {
      await store.append(await store.latestRevision(), [aCategory(code)], note)
      return
    } catch (error) {
      if ((error as { code?: string }).code !== 'stale-revision') throw error
    }
  }
}

const amount = fc.double({ min: 0, max: 1e5, noNaN: true }).map((value) => value + 0)
// Whole characters of any script. A NUL is left out: PostgreSQL can keep none in a text.
const words = fc.string({ unit: 'binary', maxLength: 20 }).map((text) => text.replaceAll('\0', ''))
const range = fc.record({ low: amount, typical: amount, high: amount }, { noNullPrototype: true })
const year = fc.option(fc.integer({ min: 1950, max: 2100 }))

const draw = fc
  .tuple(
    year,
    year,
    amount,
    amount,
    amount,
    fc.constantFrom(...PROVENANCE_KINDS),
    fc.option(words),
    fc.option(fc.nat()),
  )
  .map(([yearFrom, yearTo, lowW, typicalW, highW, kind, citation, n]) => ({
    yearFrom,
    yearTo,
    lowW,
    typicalW,
    highW,
    provenance: { kind, citation, n },
  }))

const anyCategory: fc.Arbitrary<Category> = fc.record(
  {
    code: fc.stringMatching(/^[a-z0-9]{1,8}(-[a-z0-9]{1,4})?$/),
    name: words,
    group: fc.constantFrom(...GROUPS),
    aliases: fc.array(words, { maxLength: 4 }),
    defaultQuantity: fc.integer({ min: 1, max: 1000 }),
    retired: fc.boolean(),
    keepPowered: fc.option(
      fc.record({ reason: fc.constantFrom(...KEEP_POWERED_REASONS), note: words }, { noNullPrototype: true }),
    ),
    powerFactor: range,
    modes: fc.array(
      fc.record(
        {
          mode: fc.constantFrom(...MODES),
          defaultHoursPerWeek: amount,
          draws: fc.array(draw, { maxLength: 3 }),
        },
        { noNullPrototype: true },
      ),
      { maxLength: 3 },
    ),
  },
  { noNullPrototype: true },
)

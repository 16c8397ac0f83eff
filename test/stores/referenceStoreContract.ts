import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { statesOf } from '../../src/core/reference/referenceData.ts'
import type { ReferenceEntry } from '../../src/core/reference/referenceEntry.ts'
import type { ReferenceStore } from '../../src/stores/referenceStore.ts'
import { aNote as note } from './aNote.ts'
import { aFactor, aTariff } from './aReference.ts'

export interface OpenedReferenceStore {
  readonly store: ReferenceStore
  /** A second store over the same data, as another process of the service has one. */
  readonly second: ReferenceStore
  close(): Promise<void>
}

/** What every store of tariffs and emission factors must do, whatever it keeps them in. `open` gives an empty one. */
export function referenceStoreContract(name: string, open: () => Promise<OpenedReferenceStore>): void {
  describe(`the store of tariffs and emission factors ${name}`, () => {
    let opened: OpenedReferenceStore
    let store: ReferenceStore
    beforeEach(async () => {
      opened = await open()
      store = opened.store
    })
    afterEach(() => opened.close())

    const entriesAt = async (revision: number): Promise<ReferenceEntry[]> => {
      const data = await store.dataAt(revision)
      return data === null ? [] : statesOf(data).map(({ entry }) => entry)
    }

    it('is empty at first: revision 0, which is no revision that can be read', async () => {
      expect(await store.latestRevision()).toBe(0)
      expect(await store.dataAt(0)).toBeNull()
      expect(await store.dataAt(1)).toBeNull()
    })

    it('numbers revisions from 1 without a gap, and gives back what the edit said of itself', async () => {
      const author = { organisation: 'an-organisation', keyId: 'a-key' }
      const { action, reason, at } = note
      const said = { action, author, reason, at }
      expect(await store.append(0, [aTariff('a')], note)).toEqual({ number: 1, ...said })
      expect(await store.append(1, [aFactor('a')], note)).toEqual({ number: 2, ...said })
      expect(await store.latestRevision()).toBe(2)
      expect(await store.revisions(0, 9)).toEqual([
        { number: 2, ...said },
        { number: 1, ...said },
      ])
      expect(await store.revisions(2, 2)).toHaveLength(1)
      expect(await store.revisions(3, 2 ** 40)).toEqual([])
    })

    it('keeps every revision as it was, whatever is edited later', async () => {
      const [tariff, factor] = [aTariff('a'), aFactor('b')]
      const retired = aTariff('a', { retired: true })
      const dearer = aFactor('b', { factor: { kgCo2ePerKwh: 0.4 } })
      await store.append(0, [tariff, factor], note)
      await store.append(1, [retired], note)
      await store.append(2, [dearer, aTariff('c')], note)
      expect(await entriesAt(1)).toEqual([tariff, factor])
      expect(await entriesAt(2)).toEqual([retired, factor])
      expect(await entriesAt(3)).toEqual([retired, aTariff('c'), dearer])
    })

    it('says for each entry which revision gave it its state, a tariff apart from a factor of the same code', async () => {
      await store.append(0, [aTariff('a'), aFactor('a')], note)
      await store.append(1, [aFactor('a', { region: 'Renamed' })], note)
      const data = (await store.dataAt(2))!
      expect([data.changedIn.tariff.get('a'), data.changedIn['emission-factor'].get('a')]).toEqual([1, 2])
      expect(data.entries.tariff.get('a')).toEqual(aTariff('a').content)
    })

    it('has nothing for a number that is no revision', async () => {
      await store.append(0, [aTariff('a')], note)
      for (const none of [2, 0, -1, 0.5, 1.5, NaN, Infinity, 2 ** 31, Number.MAX_SAFE_INTEGER])
        expect(await store.dataAt(none), String(none)).toBeNull()
    })

    it('gives back the very bytes of any entry, in the order of its fields', async () => {
      await fc.assert(
        fc.asyncProperty(
          fc.uniqueArray(anyEntry, { selector: nameOf, minLength: 1, maxLength: 5 }),
          async (given) => {
            const { number } = await store.append(await store.latestRevision(), given, note)
            const data = (await store.dataAt(number))!
            const read = given.map(({ kind, content }) => data.entries[kind].get(content.code))
            expect(JSON.stringify(read)).toBe(JSON.stringify(given.map(({ content }) => content)))
          },
        ),
        { numRuns: 30 },
      )
    })

    it('keeps no hold of the objects that it is given', async () => {
      const given = structuredClone(aTariff('a')) as { content: { name: string } } & ReferenceEntry
      await store.append(0, [given], note)
      given.content.name = 'Changed afterwards'
      expect(await entriesAt(1)).toEqual([aTariff('a')])
    })

    it('refuses an edit that is based on any revision but the newest, and stores nothing of it', async () => {
      await store.append(0, [aTariff('a')], note)
      await store.append(1, [aTariff('b')], note)
      for (const basedOn of [0, 1, 3])
        await expect(store.append(basedOn, [aTariff('c')], note)).rejects.toMatchObject({
          code: 'stale-revision',
        })
      expect(await store.latestRevision()).toBe(2)
      expect(await entriesAt(2)).toEqual([aTariff('a'), aTariff('b')])
    })

    it('stores all of an edit or nothing', async () => {
      const twice = [aTariff('a'), aFactor('b'), aTariff('a')]
      await expect(store.append(0, twice, note)).rejects.toThrow()
      expect(await store.latestRevision()).toBe(0)
      await store.append(0, [aTariff('c')], note)
      expect(await entriesAt(1)).toEqual([aTariff('c')])
    })

    it('lets exactly one of several edits at once win, and tells the others that they are stale', async () => {
      const editors = [store, opened.second, store, opened.second, store]
      const outcomes = await Promise.allSettled(
        editors.map((editor, index) => editor.append(0, [aTariff(`from-${index}`)], note)),
      )
      const lost = outcomes.filter((outcome) => outcome.status === 'rejected')
      expect(lost.map(({ reason }) => (reason as { code: string }).code)).toEqual(
        Array(4).fill('stale-revision'),
      )
      const winner = outcomes.findIndex(({ status }) => status === 'fulfilled')
      expect(await entriesAt(1)).toEqual([aTariff(`from-${winner}`)])
      expect(await store.latestRevision()).toBe(1)
    })
  })
}

const nameOf = ({ kind, content }: ReferenceEntry) => `${kind} ${content.code}`
const amount = fc.double({ min: 0, max: 1e5, noNaN: true }).map((value) => value + 0)
// Whole characters of any script. A NUL is left out: PostgreSQL can keep none in a text.
const words = fc.string({ unit: 'binary', maxLength: 20 }).map((text) => text.replaceAll('\0', ''))
const code = fc.stringMatching(/^[A-Za-z0-9_.:-]{1,12}$/)

const anyTariff = fc
  .tuple(code, words, fc.boolean(), amount, fc.option(amount), words)
  .map(([named, name, retired, pricePerKwh, uncertain, source]) =>
    aTariff(named, {
      name,
      retired,
      tariff: {
        // Not in the order of the alphabet, nor of their lengths, in which jsonb would give them back.
        pricePerKwh,
        kind: 'flat',
        currency: 'EUR',
        ...(uncertain !== null && { relativeUncertainty: uncertain }),
      },
      source,
    }),
  )
const anyFactor = fc
  .tuple(code, words, fc.boolean(), amount, fc.option(amount))
  .map(([named, region, retired, kgCo2ePerKwh, gridLoss]) =>
    aFactor(named, {
      region,
      retired,
      factor: { kgCo2ePerKwh, ...(gridLoss !== null && { gridLoss }) },
    }),
  )
const anyEntry: fc.Arbitrary<ReferenceEntry> = fc.oneof(anyTariff, anyFactor)

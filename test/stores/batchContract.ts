import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { BatchEntry, InventoryStore } from '../../src/stores/inventoryStore.ts'
import { anOrganisation } from './aKey.ts'
import {
  anEstimate,
  anEvent,
  anInventory,
  aVisit,
  EVERYTHING,
  type OpenedInventoryStore,
} from './anInventory.ts'

/** What every store of households must do with the lines of a batch. `open` gives an empty one. */
export function batchContract(name: string, open: () => Promise<OpenedInventoryStore>): void {
  describe(`the inventory store ${name}`, () => {
    let opened: OpenedInventoryStore
    let store: InventoryStore
    beforeEach(async () => {
      opened = await open()
      store = opened.store
      await opened.keys.addOrganisation(anOrganisation('one'), null)
      await opened.keys.addOrganisation(anOrganisation('two'), null)
    })
    afterEach(() => opened.close())

    describe('a batch', () => {
      const entry = (line: number, reference: string, asked = 'a'): BatchEntry => {
        const inventory = anInventory(`${reference}${asked}`, { reference, visits: [aVisit('2026-01-15')] })
        return {
          line,
          digest: new Uint8Array(32).fill(asked.charCodeAt(0)),
          inventory,
          estimate: anEstimate(inventory, `${reference}${asked}`),
        }
      }
      const addBatch = async (entries: readonly BatchEntry[], batch = 'batch', organisation = 'one') =>
        (await store.addBatch(organisation, batch, entries, anEvent(batch))).map((outcome) =>
          'estimate' in outcome ? [outcome.kind, outcome.estimate.id] : [outcome.kind, outcome.inventory],
        )

      it('is kept to the last byte, with its estimates and one audit event', async () => {
        const entries = [entry(1, 'x'), entry(2, 'y')]
        expect(await addBatch(entries)).toEqual(entries.map(({ estimate }) => ['stored', estimate.id]))
        for (const { inventory, estimate } of entries) {
          expect(JSON.stringify(await store.find('one', inventory.id))).toBe(JSON.stringify(inventory))
          const found = await store.findEstimate('one', inventory.id, estimate.id)
          expect(JSON.stringify(found)).toBe(JSON.stringify({ ...found, ...estimate }))
          expect(found).toEqual(estimate)
        }
        expect(
          (await store.list('one', {}, EVERYTHING)).map(({ visits, lastVisit }) => [visits, lastVisit]),
        ).toEqual([1, 1].map((visits) => [visits, '2026-01-15']))
        expect((await opened.audit.list({ subjectId: 'batch' }, EVERYTHING)).length).toBe(1)
      })

      it('stores no line twice, and tells what is in the way of others', async () => {
        await store.add('one', anInventory('there'), anEvent('there'), null)
        const first = entry(1, 'x')
        await addBatch([first])
        // Another process has made other ids for the same line.
        const again = { ...first, inventory: { ...first.inventory, id: 'z'.repeat(16) } }
        const outcomes = await addBatch([
          again,
          entry(2, 'there'),
          entry(3, 'x', 'c'),
          entry(4, 'new'),
          entry(5, 'new', 'c'),
        ])
        expect(outcomes).toEqual([
          ['already-stored', first.estimate.id],
          ['reference-taken', anInventory('there').id],
          ['reference-taken', first.inventory.id],
          ['stored', entry(4, 'new').estimate.id],
          ['reference-taken', entry(4, 'new').inventory.id],
        ])
        expect(await addBatch([entry(1, 'w', 'b')])).toEqual([['line-changed', first.inventory.id]])
        expect(await store.count('one', {})).toBe(3)
      })

      it('has nothing to do with a batch of the same name of another organisation', async () => {
        const { inventory, ...rest } = entry(1, 'x')
        await addBatch([{ ...rest, inventory }])
        const theirs = { ...inventory, id: 'y'.repeat(16) }
        const outcomes = await addBatch(
          [{ ...rest, inventory: theirs, estimate: anEstimate(theirs, 'theirs') }],
          'batch',
          'two',
        )
        expect(outcomes).toEqual([['stored', anEstimate(theirs, 'theirs').id]])
      })

      it('that is sent by two processes at once is stored once', async () => {
        const entries = (of: string) =>
          Array.from({ length: 20 }, (_, i) => {
            const { inventory, ...rest } = entry(i + 1, `r${i}`)
            const mine = { ...inventory, id: `${of}${i}`.padEnd(16, 'q') }
            return { ...rest, inventory: mine, estimate: anEstimate(mine, `${of}${i}`) }
          })
        const send = (to: InventoryStore, of: string, backwards: boolean) =>
          to.addBatch('one', 'batch', backwards ? entries(of).reverse() : entries(of), anEvent('batch'))
        const [one, other] = await Promise.all([send(store, 'm', false), send(opened.second, 'n', true)])
        const kinds = [...one, ...other].map(({ kind }) => kind).sort()
        expect(kinds).toEqual([...Array(20).fill('already-stored'), ...Array(20).fill('stored')])
        expect(await store.count('one', {})).toBe(20)
      })
    })
  })
}

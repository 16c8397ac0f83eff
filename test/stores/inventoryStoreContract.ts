import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Inventory } from '../../src/core/inventory/inventory.ts'
import type { InventoryStore } from '../../src/stores/inventoryStore.ts'
import { anOrganisation } from './aKey.ts'
import {
  anEstimate,
  anEvent,
  anInventory,
  aVisit,
  EVERYTHING,
  later,
  once,
  type OpenedInventoryStore,
} from './anInventory.ts'

/** What every store of households must do, whatever it keeps them in. `open` gives an empty one. */
export function inventoryStoreContract(name: string, open: () => Promise<OpenedInventoryStore>): void {
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
    const add = (inventory: Inventory, organisation = 'one') =>
      store.add(organisation, inventory, anEvent(inventory.id), null)
    const next = (before: Inventory) => ({
      after: { ...before, version: before.version + 1 },
      event: anEvent(before.id),
    })

    it('gives back an inventory to the last byte', async () => {
      const inventory = anInventory('home', {
        visits: [aVisit('2026-01-15')],
        annualUseKwh: 3200.1,
        notes: 'ß "quoted" \n',
      })
      await add(inventory)
      expect(JSON.stringify(await store.find('one', inventory.id))).toBe(JSON.stringify(inventory))
    })

    it('shows an organisation nothing of another', async () => {
      const inventory = anInventory('home')
      await add(inventory)
      const estimate = anEstimate(inventory, 'estimate')
      await store.addEstimate('one', estimate, anEvent(inventory.id), null)
      expect(await store.find('two', inventory.id)).toBeNull()
      expect(await store.list('two', {}, EVERYTHING)).toEqual([])
      expect(await store.count('two', {})).toBe(0)
      expect(await store.findEstimate('two', inventory.id, estimate.id)).toBeNull()
      expect(await store.estimates('two', inventory.id, EVERYTHING)).toEqual([])
      await expect(store.change('two', inventory.id, next, null)).rejects.toMatchObject({
        code: 'unknown-inventory',
      })
      await expect(store.remove('two', inventory.id, () => anEvent(inventory.id))).rejects.toMatchObject({
        code: 'unknown-inventory',
      })
      await expect(store.addEstimate('two', estimate, anEvent(inventory.id), null)).rejects.toMatchObject({
        code: 'unknown-inventory',
      })
      expect(await store.find('one', inventory.id)).toEqual(inventory)
    })

    it('lets two organisations use one reference, and one organisation once', async () => {
      await add(anInventory('home'))
      await add({ ...anInventory('other'), content: { reference: 'home', visits: [] } }, 'two')
      const again = { ...anInventory('third'), content: { reference: 'home', visits: [] } }
      await expect(add(again)).rejects.toMatchObject({
        code: 'inventory-exists',
        details: { id: anInventory('home').id },
      })
      await add(anInventory('third'))
      await expect(
        store.change('one', again.id, () => ({ after: again, event: anEvent(again.id) }), null),
      ).rejects.toMatchObject({ code: 'inventory-exists' })
      expect((await store.find('one', again.id))?.content.reference).toBe('third')
    })

    it('lists newest first, in pages from either end, by every filter', async () => {
      await add(anInventory('a', { visits: [aVisit('2026-03-01'), aVisit('2026-01-01')] }, 1))
      await add(anInventory('b', { visits: [aVisit('2026-02-01')] }, 2))
      await add(anInventory('c', {}, 2))
      await add(anInventory('d', { visits: [aVisit('2026-02-01'), aVisit('2026-05-01')] }, 3))
      const list = async (filter: object, window: object = {}) =>
        (await store.list('one', filter, { ...EVERYTHING, ...window })).map(({ reference }) => reference)
      expect(await list({})).toEqual(['d', 'c', 'b', 'a'])
      const place = { at: later(2), id: anInventory('c').id }
      expect(await list({}, { after: place })).toEqual(['b', 'a'])
      expect(await list({}, { before: place })).toEqual(['d'])
      expect(await list({}, { limit: 2 })).toEqual(['d', 'c'])
      expect(await list({}, { limit: 2, keep: 'last' })).toEqual(['b', 'a'])
      expect(await list({ reference: 'b' })).toEqual(['b'])
      expect(await list({ followedUp: true })).toEqual(['d', 'a'])
      expect(await list({ followedUp: false })).toEqual(['c', 'b'])
      expect(await list({ visitedFrom: '2026-03-01' })).toEqual(['d', 'a'])
      expect(await list({ visitedTo: '2026-03-01' })).toEqual(['b', 'a'])
      expect(await store.count('one', { visitedFrom: '2026-02-01', visitedTo: '2026-03-01' })).toBe(2)
      expect((await store.list('one', { reference: 'a' }, EVERYTHING))[0]).toEqual({
        id: anInventory('a').id,
        reference: 'a',
        version: 1,
        createdAt: later(1).toISOString(),
        updatedAt: later(1).toISOString(),
        visits: 2,
        lastVisit: '2026-03-01',
      })
    })

    it('changes one after the other, however many change at once', async () => {
      const inventory = anInventory('home')
      await add(inventory)
      const changes = Array.from({ length: 10 }, (_, i) =>
        (i % 2 === 0 ? store : opened.second).change('one', inventory.id, next, null),
      )
      const versions = (await Promise.all(changes)).map(({ result }) => result.version)
      expect(versions.sort((a, b) => a - b)).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10, 11])
    })

    it('leaves everything as it was where a change is refused', async () => {
      const inventory = anInventory('home')
      await add(inventory)
      const refuse = () => {
        throw new Error('refused')
      }
      await expect(store.change('one', inventory.id, refuse, once('key', 'a'))).rejects.toThrow('refused')
      await expect(store.remove('one', inventory.id, refuse)).rejects.toThrow('refused')
      expect(await store.find('one', inventory.id)).toEqual(inventory)
      expect(await opened.audit.count({})).toBe((await opened.audit.list({}, EVERYTHING)).length)
      // The refused request left its key free.
      const { replayed } = await store.change('one', inventory.id, next, once('key', 'a'))
      expect(replayed).toBe(false)
    })

    it('takes an inventory away with its estimates and kept answers', async () => {
      const inventory = anInventory('home')
      await store.add('one', inventory, anEvent(inventory.id), once('key', 'a'))
      await store.addEstimate('one', anEstimate(inventory, 'estimate'), anEvent(inventory.id), once('e', 'a'))
      await store.remove('one', inventory.id, (before) => anEvent(before.id))
      expect(await store.find('one', inventory.id)).toBeNull()
      expect(await store.estimates('one', inventory.id, EVERYTHING)).toEqual([])
      // Nothing is replayed that would bring back what was deleted.
      const again = await store.add('one', anInventory('home', {}, 1), anEvent('x'), once('key', 'b', 1))
      expect(again.replayed).toBe(false)
      expect(await store.estimates('one', inventory.id, EVERYTHING)).toEqual([])
    })

    it('keeps estimates to the last byte, newest first, in pages', async () => {
      const inventory = anInventory('home')
      await add(inventory)
      const estimates = ['x', 'y', 'z'].map((each, i) => anEstimate(inventory, each, i))
      for (const estimate of estimates) await store.addEstimate('one', estimate, anEvent(inventory.id), null)
      const found = await store.findEstimate('one', inventory.id, estimates[1]!.id)
      expect(JSON.stringify(found?.result)).toBe(JSON.stringify(estimates[1]!.result))
      expect(found).toEqual(estimates[1])
      const ids = async (window: object) =>
        (await store.estimates('one', inventory.id, { ...EVERYTHING, ...window })).map(({ id }) => id[0])
      expect(await ids({})).toEqual(['z', 'y', 'x'])
      const place = { at: later(1), id: estimates[1]!.id }
      expect(await ids({ after: place })).toEqual(['x'])
      expect(await ids({ before: place })).toEqual(['z'])
      expect(await ids({ limit: 2, keep: 'last' })).toEqual(['y', 'x'])
    })

    describe('a request with a key', () => {
      it('has its effect once, and the same answer each time', async () => {
        const inventory = anInventory('home')
        await add(inventory)
        const first = await store.change('one', inventory.id, next, once('key', 'a'))
        const again = await opened.second.change('one', inventory.id, next, once('key', 'a', 5))
        expect(first.replayed).toBe(false)
        expect(again).toEqual({ result: first.result, replayed: true })
        expect((await store.find('one', inventory.id))?.version).toBe(2)
      })

      it('is refused where the key came with another request', async () => {
        await store.add('one', anInventory('home'), anEvent('home'), once('key', 'a'))
        await expect(
          store.add('one', anInventory('other'), anEvent('other'), once('key', 'b')),
        ).rejects.toMatchObject({ code: 'idempotency-key-reused' })
        expect(await store.count('one', {})).toBe(1)
      })

      it('has nothing to do with another organisation that uses the same key', async () => {
        await store.add('one', anInventory('home'), anEvent('home'), once('key', 'a'))
        const other = await store.add('two', anInventory('other'), anEvent('other'), once('key', 'b'))
        expect(other.replayed).toBe(false)
      })

      it('is forgotten after a day', async () => {
        const inventory = anInventory('home')
        await add(inventory)
        await store.change('one', inventory.id, next, once('key', 'a'))
        const inTime = await store.change('one', inventory.id, next, once('key', 'a', 24 * 60 - 1))
        const late = await store.change('one', inventory.id, next, once('key', 'b', 24 * 60))
        expect([inTime.replayed, late.replayed]).toEqual([true, false])
      })
    })
  })
}

/** What only stores can show that have real transactions beside each other, or wait for each other. */
export function onceUnderWayContract(name: string, open: () => Promise<OpenedInventoryStore>): void {
  describe(`the inventory store ${name}, asked twice at once`, () => {
    it('refuses the second request with the key, and has one effect', async () => {
      const opened = await open()
      const { store, keys } = opened
      await keys.addOrganisation(anOrganisation('one'), null)
      const results = await Promise.allSettled(
        Array.from({ length: 5 }, (_, i) =>
          store.add('one', anInventory(`home${i}`), anEvent('home'), once('key', 'a')),
        ),
      )
      const refused = results.filter(({ status }) => status === 'rejected')
      expect(results.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
      for (const one of refused) expect(one).toMatchObject({ reason: { code: 'idempotency-key-busy' } })
      expect(await store.count('one', {})).toBe(1)
      await opened.close()
    })
  })
}

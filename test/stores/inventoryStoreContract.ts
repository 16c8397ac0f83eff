import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { NewAuditEvent } from '../../src/core/access/auditEvent.ts'
import type { Inventory, InventoryContent } from '../../src/core/inventory/inventory.ts'
import type { StoredEstimate } from '../../src/core/inventory/storedEstimate.ts'
import type { AuditStore } from '../../src/stores/auditStore.ts'
import type { BatchEntry, InventoryStore } from '../../src/stores/inventoryStore.ts'
import type { KeyStore } from '../../src/stores/keyStore.ts'
import type { Once } from '../../src/stores/once.ts'
import { anOrganisation } from './aKey.ts'

export interface OpenedInventoryStore {
  readonly store: InventoryStore
  /** A second store over the same data, as another process of the service has one. */
  readonly second: InventoryStore
  readonly keys: KeyStore
  /** The trail that both write into. */
  readonly audit: AuditStore
  close(): Promise<void>
}

const EVERYTHING = { limit: 1_000, keep: 'first' } as const
const START = Date.parse('2026-01-31T12:00:00.000Z')
const later = (minutes: number) => new Date(START + minutes * 60_000)

const anInventory = (name: string, content: Partial<InventoryContent> = {}, minutes = 0): Inventory => ({
  id: name.padEnd(16, 'a'),
  version: 1,
  createdAt: later(minutes).toISOString(),
  updatedAt: later(minutes).toISOString(),
  content: { reference: name, visits: [], ...content },
})
const aVisit = (date: string) => ({ date, devices: [{ category: 'television' }] })
const anEstimate = (inventory: Inventory, name: string, minutes = 0): StoredEstimate =>
  ({
    id: name.padEnd(16, 'b'),
    inventory: inventory.id,
    visit: '2026-01-15',
    madeAt: later(minutes).toISOString(),
    catalogueRevision: 1,
    methodVersion: '1',
    household: { devices: [{ category: 'television' }] },
    basis: {},
    // Fields in an order that only a store that keeps it gives back.
    result: { zebra: 1, ant: 0.1 + 0.2 },
  }) as unknown as StoredEstimate
const anEvent = (subjectId: string): NewAuditEvent => ({
  at: later(0),
  origin: null,
  concerns: 'one',
  action: 'inventory.change',
  subjectKind: 'inventory',
  subjectId,
  before: null,
  after: null,
})
const once = (key: string, asked: string, minutes = 0): Once => ({
  key,
  digest: new Uint8Array(32).fill(asked.charCodeAt(0)),
  at: later(minutes),
})

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
        await add(anInventory('there'))
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

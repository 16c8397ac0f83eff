import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { InventoryContent, Visit } from '../../src/core/inventory/inventory.ts'
import type { Rejection } from '../../src/core/proposals/rejection.ts'
import type { StoredReading } from '../../src/core/proposals/storedReading.ts'
import type { AuditStore } from '../../src/stores/auditStore.ts'
import type { InventoryStore } from '../../src/stores/inventoryStore.ts'
import type { KeyStore } from '../../src/stores/keyStore.ts'
import type { ProposalStore } from '../../src/stores/proposalStore.ts'
import { anOrganisation } from './aKey.ts'
import { anEstimate, anEvent, anInventory, EVERYTHING, later } from './anInventory.ts'

export interface OpenedProposalStore {
  readonly store: ProposalStore
  readonly inventories: InventoryStore
  readonly keys: KeyStore
  readonly audit: AuditStore
  close(): Promise<void>
}

const power = (watts: number) => ({ kind: 'power', watts }) as const
const series = { kind: 'samples', watts: [1, 1.5, 1], intervalSeconds: 1 } as const
const read = (watts: number, category = 'television') => ({
  category,
  modes: [{ mode: 'standby' as const, reading: power(watts) }],
})
const visit = (date: string, ...devices: Visit['devices']): Visit => ({ date, devices })
export const aRejection = (fields: Partial<Rejection> = {}): Rejection => ({
  category: 'television',
  mode: 'standby',
  yearFrom: null,
  yearTo: 2009,
  version: '1-8-0.1-0.2-0.3',
  n: 8,
  lowW: 0.1,
  typicalW: 0.1 + 0.2,
  highW: 0.5,
  author: { organisation: 'one', keyId: 'a-key' },
  reason: 'ß "quoted" \n',
  at: later(0),
  ...fields,
})

/** What every store of readings and rejections must do, whatever it keeps them in. `open` gives an empty one. */
export function proposalStoreContract(name: string, open: () => Promise<OpenedProposalStore>): void {
  describe(`the proposal store ${name}`, () => {
    let opened: OpenedProposalStore
    let store: ProposalStore
    beforeEach(async () => {
      opened = await open()
      store = opened.store
      await opened.keys.addOrganisation(anOrganisation('one'), null)
      await opened.keys.addOrganisation(anOrganisation('two'), null)
    })
    afterEach(() => opened.close())
    const add = async (id: string, content: Partial<InventoryContent>, organisation = 'one') => {
      const inventory = anInventory(id, content)
      await opened.inventories.add(organisation, inventory, anEvent(id), null)
      return inventory
    }
    const readings = async (category: string) => {
      const all: StoredReading[] = []
      for await (const page of store.readings(category)) all.push(...page)
      return all
    }
    const wattsOf = async (category: string) =>
      (await readings(category))
        .map(({ reading }) => (reading.kind === 'power' ? reading.watts : null))
        .sort()

    it('finds a reading with everything that is said of it, and nothing where nothing was said', async () => {
      const tv = { ...read(0.1 + 0.2), id: 'tv', year: 2018, quantity: 2 }
      const home = await add('home', { visits: [visit('2026-01-15', { category: 'router' }, tv, read(5))] })
      const where = { organisation: 'one', inventory: home.id, visit: '2026-01-15', category: 'television' }
      expect(await readings('television')).toEqual([
        {
          ...where,
          place: 1,
          device: 'tv',
          mode: 'standby',
          year: 2018,
          quantity: 2,
          reading: power(0.1 + 0.2),
        },
        { ...where, place: 2, device: null, mode: 'standby', year: null, quantity: null, reading: power(5) },
      ])
    })

    it('holds readings of real power alone, of every mode and visit', async () => {
      const modes = [
        { mode: 'off', reading: { kind: 'energy', wattHours: 5, durationHours: 10 } },
        { mode: 'standby', reading: series },
        { mode: 'idle', reading: { kind: 'current', amperes: 1 } },
        { mode: 'networked-standby', reading: { kind: 'declared', watts: 3 } },
        { mode: 'no-load' },
      ] as const
      const device = { category: 'television', modes }
      await add('home', { visits: [visit('2026-01-15', device), visit('2026-02-15', device)] })
      const found = await readings('television')
      expect(found.map((one) => `${one.visit} ${one.mode} ${one.reading.kind}`).sort()).toEqual([
        '2026-01-15 off energy',
        '2026-01-15 standby samples',
        '2026-02-15 off energy',
        '2026-02-15 standby samples',
      ])
      expect(found.find(({ reading }) => reading.kind === 'samples')?.reading).toEqual(series)
    })

    it('tells the names of categories as they were written, each once', async () => {
      await add('a', {
        visits: [visit('2026-01-15', read(1, 'TV'), read(1, 'router'), { category: 'lamp' })],
      })
      await add('b', { visits: [visit('2026-01-15', read(1, 'TV'))] }, 'two')
      expect(await store.categoryNames()).toEqual(['TV', 'router'])
      expect(await readings('tv')).toEqual([])
    })

    it('follows inventories that are changed, removed or come in with a batch', async () => {
      const home = await add('home', { visits: [visit('2026-01-15', read(1))] })
      const other = await add('other', { visits: [visit('2026-01-15', read(2))] })
      const batched = anInventory('batched', { visits: [visit('2026-01-15', read(3))] })
      const entry = {
        line: 1,
        digest: new Uint8Array(32).fill(1),
        inventory: batched,
        estimate: anEstimate(batched, 'estimate'),
      }
      await opened.inventories.addBatch('two', 'batch', [entry], anEvent('batch'))
      expect(await wattsOf('television')).toEqual([1, 2, 3])
      const content = {
        ...home.content,
        visits: [visit('2026-01-15', read(4)), visit('2026-02-15', read(5))],
      }
      await opened.inventories.change(
        'one',
        home.id,
        (before) => ({ after: { ...before, version: 2, content }, event: anEvent(home.id) }),
        null,
      )
      expect(await wattsOf('television')).toEqual([2, 3, 4, 5])
      await opened.inventories.remove('one', other.id, () => anEvent(other.id))
      expect(await wattsOf('television')).toEqual([3, 4, 5])
    })

    it('leaves no reading of an inventory that was not stored', async () => {
      await add('home', { visits: [visit('2026-01-15', read(1))] })
      const second = { reference: 'home', visits: [visit('2026-01-15', read(2))] }
      await expect(add('other', second)).rejects.toMatchObject({ code: 'inventory-exists' })
      expect(await wattsOf('television')).toEqual([1])
    })

    it('gives more readings than fit on a page, each once', async () => {
      const devices = Array.from({ length: 450 }, (_, i) => read(i + 1))
      for (const id of ['a', 'b', 'c']) await add(id, { visits: [visit('2026-01-15', ...devices)] })
      const found = await readings('television')
      expect(new Set(found.map(({ inventory, place }) => `${inventory} ${place}`)).size).toBe(1350)
      expect(found).toHaveLength(1350)
    })

    it('keeps rejections as they are, oldest first, each with its audit event', async () => {
      const [first, second] = [aRejection(), aRejection({ n: 20, yearFrom: 2010, yearTo: null })]
      await store.reject(first, { ...anEvent('television'), subjectKind: 'category' })
      await store.reject(aRejection({ category: 'router' }), anEvent('router'))
      await store.reject(second, anEvent('television'))
      expect(await store.rejections('television')).toEqual([first, second])
      expect(await store.rejections('lamp')).toEqual([])
      const events = await opened.audit.list({ subjectKind: 'category' }, EVERYTHING)
      expect(events.map(({ subjectId }) => subjectId)).toEqual(['television'])
    })
  })
}

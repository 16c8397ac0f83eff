import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { NewAuditEvent } from '../../src/core/access/auditEvent.ts'
import type { AuditStore } from '../../src/stores/auditStore.ts'
import { originOf } from './aKey.ts'

export interface OpenedAuditStore {
  readonly store: AuditStore
  /** Writes an event, as a store does with its own change. */
  write(event: NewAuditEvent): Promise<void>
  close(): Promise<void>
}

const EVERYTHING = { limit: 1_000, keep: 'first' } as const
const at = (minute: number) => new Date(Date.UTC(2024, 1, 29, 12, minute))
const event = (minute: number, changes: Partial<NewAuditEvent> = {}): NewAuditEvent => ({
  at: at(minute),
  origin: originOf('a-key', 'a-utility'),
  action: 'catalogue.edit',
  subjectKind: 'category',
  subjectId: 'television',
  before: null,
  after: null,
  ...changes,
})

/** What every audit trail must do, whatever it is kept in. `open` gives an empty one. */
export function auditStoreContract(name: string, open: () => Promise<OpenedAuditStore>): void {
  describe(`the audit store ${name}`, () => {
    let opened: OpenedAuditStore
    let store: AuditStore
    beforeEach(async () => {
      opened = await open()
      store = opened.store
    })
    afterEach(() => opened.close())
    const writeAll = async (events: readonly NewAuditEvent[]) => {
      for (const each of events) await opened.write(each)
    }
    const minutes = async (...[filter, window]: Partial<Parameters<AuditStore['list']>>) =>
      (await store.list(filter ?? {}, window ?? EVERYTHING)).map((found) => found.at.getUTCMinutes())

    it('is empty at first', async () => {
      expect(await store.list({}, EVERYTHING)).toEqual([])
      expect(await store.count({})).toBe(0)
    })

    it('gives back what was written: who, what, and any JSON before and after', async () => {
      const before = {
        figures: [1, 0.1, -2e-9],
        text: 'Gerät "x" \\ \n',
        nothing: null,
        nested: { flag: true },
      }
      await opened.write(event(7, { before, after: ['list', { left: undefined, when: at(3) }] }))
      const [found] = await store.list({}, EVERYTHING)
      expect(found).toEqual({
        id: found?.id,
        at: at(7),
        organisation: 'a-utility',
        keyId: 'a-key',
        requestId: 'request-of-a-key',
        action: 'catalogue.edit',
        subjectKind: 'category',
        subjectId: 'television',
        concerns: 'a-utility',
        before,
        after: ['list', { when: '2024-02-29T12:03:00.000Z' }],
      })
      expect(found?.id).toMatch(/^[1-9]\d*$/)
      expect(await store.find(found!.id)).toEqual(found)
    })

    it('says null of a write by the service itself, which is nobody else’s matter', async () => {
      await opened.write(event(1, { origin: null, before: undefined }))
      expect((await store.list({}, EVERYTHING))[0]).toMatchObject({
        organisation: null,
        keyId: null,
        requestId: null,
        concerns: null,
        before: null,
        after: null,
      })
    })

    it('finds nothing by what is no id of an event', async () => {
      await opened.write(event(1))
      for (const none of ['0', '-1', '999999', '1.5', '1e0', ' 1', 'x', '', '9'.repeat(30)])
        expect(await store.find(none), none).toBeNull()
    })

    it('lists newest first, in the order in which events were written, whatever time they name', async () => {
      await writeAll([event(5), event(9), event(1)])
      expect(await minutes()).toEqual([1, 9, 5])
    })

    it('filters by whose matter, action, subject and time, and by all of it at once', async () => {
      await writeAll([
        event(1),
        event(2, { action: 'api-key.issue', subjectKind: 'api-key', subjectId: 'k' }),
        event(3, { origin: originOf('k', 'other') }),
        event(4, { origin: originOf('k', 'operator'), concerns: 'a-utility' }),
        event(5, { subjectId: 'router' }),
      ])
      expect(await minutes({ organisation: 'a-utility' })).toEqual([5, 4, 2, 1])
      expect(await minutes({ organisation: 'operator' })).toEqual([])
      expect(await minutes({ action: 'api-key.issue' })).toEqual([2])
      expect(await minutes({ subjectKind: 'category' })).toEqual([5, 4, 3, 1])
      expect(await minutes({ subjectKind: 'category', subjectId: 'router' })).toEqual([5])
      expect(await minutes({ from: at(2) })).toEqual([5, 4, 3, 2])
      expect(await minutes({ to: at(2) })).toEqual([1])
      expect(await minutes({ from: at(2), to: at(5), organisation: 'a-utility' })).toEqual([4, 2])
      expect(await store.count({ from: at(2), to: at(5), organisation: 'a-utility' })).toBe(2)
      expect(await store.count({})).toBe(5)
    })

    it('gives any part of a filtered trail, from either end', async () => {
      await writeAll(
        [1, 2, 3, 4, 5, 6].map((minute) => event(minute, minute === 4 ? { action: 'other' } : {})),
      )
      const all = await store.list({}, EVERYTHING)
      const id = (minute: number) => all.find((found) => found.at.getUTCMinutes() === minute)!.id
      const mine = { action: 'catalogue.edit' }
      expect(await minutes(mine, { limit: 2, keep: 'first' })).toEqual([6, 5])
      expect(await minutes(mine, { limit: 2, keep: 'last' })).toEqual([2, 1])
      expect(await minutes(mine, { after: id(5), limit: 2, keep: 'first' })).toEqual([3, 2])
      expect(await minutes(mine, { before: id(2), limit: 2, keep: 'last' })).toEqual([5, 3])
      expect(await minutes(mine, { after: id(6), before: id(1), limit: 9, keep: 'first' })).toEqual([5, 3, 2])
      expect(await minutes(mine, { limit: 0, keep: 'first' })).toEqual([])
    })
  })
}

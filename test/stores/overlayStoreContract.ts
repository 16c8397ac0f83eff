import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Category } from '../../src/core/catalogue/category.ts'
import type { OverlayEdit } from '../../src/core/catalogue/overlayRevision.ts'
import type { AuditStore } from '../../src/stores/auditStore.ts'
import type { OverlayStore } from '../../src/stores/overlayStore.ts'
import { aCategory } from './aCategory.ts'

export interface OpenedOverlays {
  /** Where the organisations `ours` and `theirs` are, and nothing is laid. */
  readonly store: OverlayStore
  /** A second store over the same data, as another process of the service has one. */
  readonly second: OverlayStore
  readonly audit: AuditStore
  close(): Promise<void>
}

const at = new Date('2024-02-29T23:59:58.789Z')

/** The edit that makes an organisation's category this; null takes it away. */
export const anOverlayEdit = (
  organisation: string,
  code: string,
  category: Category | null = aCategory(code),
  action: OverlayEdit['action'] = category === null ? 'remove' : 'lay',
): OverlayEdit => ({
  action,
  code,
  category,
  origin: {
    caller: { organisation, keyId: `key-of-${organisation}`, scopes: ['catalogue:edit'] },
    requestId: 'a-request',
  },
  reason: 'a test',
  at,
})

/** What every overlay store must do, whatever it keeps overlays in. */
export function overlayStoreContract(name: string, open: () => Promise<OpenedOverlays>): void {
  describe(`the overlay store ${name}`, () => {
    let opened: OpenedOverlays
    let store: OverlayStore
    beforeEach(async () => {
      opened = await open()
      store = opened.store
    })
    afterEach(() => opened.close())

    const codesAt = async (organisation: string, revision: number) => {
      const overlay = await store.overlayAt(organisation, revision)
      return overlay && [...overlay.categories.keys()]
    }

    it('holds nothing at first: revision 0, which is no revision that can be read', async () => {
      expect(await store.latestRevisions()).toEqual(new Map())
      expect(await store.overlayAt('ours', 0)).toBeNull()
      expect(await store.overlayAt('ours', 1)).toBeNull()
      expect(await store.revision('ours', 1)).toBeNull()
      expect(await store.revisions('ours', 1, 10)).toEqual([])
    })

    it('numbers the revisions of each organisation from 1 without a gap, and gives back what was said', async () => {
      const author = { organisation: 'ours', keyId: 'key-of-ours' }
      const said = { action: 'lay', code: 'a', author, reason: 'a test', at }
      expect(await store.append(0, anOverlayEdit('ours', 'a'))).toEqual({ number: 1, ...said })
      await store.append(0, anOverlayEdit('theirs', 'z'))
      expect(await store.append(1, anOverlayEdit('ours', 'b'))).toEqual({ number: 2, ...said, code: 'b' })
      expect(await store.latestRevisions()).toEqual(
        new Map([
          ['ours', 2],
          ['theirs', 1],
        ]),
      )
      expect(await store.revisions('ours', 1, 9)).toEqual([
        { number: 2, ...said, code: 'b' },
        { number: 1, ...said },
      ])
      expect(await store.revisions('ours', 2, 2)).toHaveLength(1)
    })

    it('keeps every revision as it was, whatever is laid, changed and taken away later', async () => {
      const renamed = aCategory('a', { name: 'Renamed' })
      await store.append(0, anOverlayEdit('ours', 'b'))
      await store.append(1, anOverlayEdit('ours', 'a'))
      await store.append(2, anOverlayEdit('ours', 'a', renamed, 'change'))
      await store.append(3, anOverlayEdit('ours', 'b', null))
      expect(await codesAt('ours', 1)).toEqual(['b'])
      expect(await codesAt('ours', 2)).toEqual(['a', 'b'])
      expect((await store.overlayAt('ours', 2))?.categories.get('a')).toEqual(aCategory('a'))
      const newest = await store.overlayAt('ours', 4)
      expect(newest).toEqual({
        organisation: 'ours',
        revision: 4,
        categories: new Map([['a', renamed]]),
        changedIn: new Map([['a', 3]]),
      })
    })

    it('gives a revision with the category before and after; null where it did not lie there', async () => {
      const renamed = aCategory('a', { name: 'Renamed' })
      await store.append(0, anOverlayEdit('ours', 'a'))
      await store.append(1, anOverlayEdit('ours', 'b'))
      await store.append(2, anOverlayEdit('ours', 'a', renamed, 'change'))
      await store.append(3, anOverlayEdit('ours', 'a', null))
      expect(await store.revision('ours', 1)).toMatchObject({
        number: 1,
        before: null,
        after: aCategory('a'),
      })
      expect(await store.revision('ours', 3)).toMatchObject({ before: aCategory('a'), after: renamed })
      expect(await store.revision('ours', 4)).toMatchObject({
        action: 'remove',
        code: 'a',
        before: renamed,
        after: null,
      })
    })

    it('tells nothing of one organisation to another', async () => {
      await store.append(0, anOverlayEdit('theirs', 'a'))
      await store.append(1, anOverlayEdit('theirs', 'b'))
      await store.append(0, anOverlayEdit('ours', 'a', aCategory('a', { name: 'Ours' })))
      expect((await store.overlayAt('ours', 1))?.categories.get('a')?.name).toBe('Ours')
      expect(await store.overlayAt('ours', 2)).toBeNull()
      expect(await store.revision('ours', 2)).toBeNull()
      expect(await store.revisions('ours', 1, 9)).toHaveLength(1)
      expect((await store.revision('ours', 1))?.before).toBeNull()
    })

    it('has nothing for a number that is no revision', async () => {
      await store.append(0, anOverlayEdit('ours', 'a'))
      for (const none of [2, 0, -1, 0.5, NaN, Infinity, 2 ** 31, Number.MAX_SAFE_INTEGER]) {
        expect(await store.overlayAt('ours', none), String(none)).toBeNull()
        expect(await store.revision('ours', none), String(none)).toBeNull()
      }
    })

    it('refuses an edit that is based on any revision but the newest, and stores nothing of it', async () => {
      await store.append(0, anOverlayEdit('ours', 'a'))
      for (const basedOn of [0, 2])
        await expect(store.append(basedOn, anOverlayEdit('ours', 'b'))).rejects.toMatchObject({
          code: 'stale-overlay',
        })
      expect(await codesAt('ours', 1)).toEqual(['a'])
      expect(await opened.audit.count({})).toBe(1)
    })

    it('lets exactly one of several edits at once win, and tells the others that they are stale', async () => {
      const editors = [store, opened.second, store, opened.second]
      const outcomes = await Promise.allSettled(
        editors.map((editor, index) => editor.append(0, anOverlayEdit('ours', `from-${index}`))),
      )
      const lost = outcomes.filter((outcome) => outcome.status === 'rejected')
      expect(lost.map(({ reason }) => (reason as { code: string }).code)).toEqual(
        Array(3).fill('stale-overlay'),
      )
      expect(await store.latestRevisions()).toEqual(new Map([['ours', 1]]))
    })

    it('leaves an audit event with each edit, with before and after, that concerns the organisation', async () => {
      await store.append(0, anOverlayEdit('ours', 'a'))
      await store.append(1, anOverlayEdit('ours', 'a', null))
      const events = await opened.audit.list({ organisation: 'ours' }, { limit: 10, keep: 'first' })
      expect(events).toMatchObject([
        {
          action: 'overlay.remove',
          subjectKind: 'overlay-category',
          subjectId: 'a',
          concerns: 'ours',
          keyId: 'key-of-ours',
          requestId: 'a-request',
          before: { overlayRevision: 1, category: { code: 'a' } },
          after: { overlayRevision: 2, reason: 'a test', category: null },
        },
        { action: 'overlay.lay', before: null, after: { overlayRevision: 1, category: { code: 'a' } } },
      ])
      expect(await opened.audit.count({ organisation: 'theirs' })).toBe(0)
    })

    it('gives back the very bytes of a category', async () => {
      const given = aCategory('a', { keepPowered: { reason: 'medical', note: 'Ümlaut “quoted”' } })
      await store.append(0, anOverlayEdit('ours', 'a', given))
      const read = (await store.overlayAt('ours', 1))?.categories.get('a')
      expect(JSON.stringify(read)).toBe(JSON.stringify(given))
    })
  })
}

import { expect, it } from 'vitest'
import type { CatalogueStore } from '../../src/stores/catalogueStore.ts'
import { aCategory } from './aCategory.ts'
import { aNote } from './aNote.ts'

/** What every catalogue store must tell of its history. `store` gives the empty one of the test that runs. */
export function catalogueHistoryContract(store: () => CatalogueStore): void {
  /** Four revisions: a and b, then b changed, then c and d, then b and c changed. */
  const fill = async () => {
    await store().append(0, [aCategory('a'), aCategory('b')], { ...aNote, action: 'seed', origin: null })
    await store().append(1, [aCategory('b', { name: 'Second b' })], aNote)
    await store().append(2, [aCategory('c'), aCategory('d')], { ...aNote, action: 'import' })
    await store().append(3, [aCategory('c', { retired: true }), aCategory('b', { name: 'Third b' })], aNote)
  }

  it('says for each category of a revision which revision gave it its state', async () => {
    await fill()
    const changedIn = async (revision: number) => [
      ...((await store().catalogueAt(revision))?.changedIn ?? new Map<string, number>()),
    ]
    expect(await changedIn(2)).toEqual([
      ['a', 1],
      ['b', 2],
    ])
    expect(await changedIn(4)).toEqual([
      ['a', 1],
      ['b', 4],
      ['c', 4],
      ['d', 3],
    ])
  })

  it('gives the last states between two revisions, which lead from the one to the other', async () => {
    await fill()
    const between = async (after: number, upTo: number) =>
      (await store().statesBetween(after, upTo))
        .map(({ category, revision }) => `${category.code} ${revision} ${category.name}`)
        .sort()
    expect(await between(1, 3)).toEqual(['b 2 Second b', 'c 3 Invented c', 'd 3 Invented d'])
    expect(await between(1, 4)).toEqual(['b 4 Third b', 'c 4 Invented c', 'd 3 Invented d'])
    expect(await between(4, 4)).toEqual([])
  })

  it('lists revisions newest first, each with who made it, when and why', async () => {
    await fill()
    const author = { organisation: 'an-organisation', keyId: 'a-key' }
    const { reason, at } = aNote
    expect(await store().revisions(1, 3)).toEqual([
      { number: 3, action: 'import', author, reason, at },
      { number: 2, action: 'change', author, reason, at },
      { number: 1, action: 'seed', author: { organisation: 'system', keyId: null }, reason, at },
    ])
    expect((await store().revisions(-5, 2 ** 40)).map(({ number }) => number)).toEqual([4, 3, 2, 1])
    expect(await store().revisions(5, 9)).toEqual([])
    expect(await store().revisions(3, 2)).toEqual([])
  })

  it('tells what a revision changed, before and after, in pages', async () => {
    await fill()
    const page = (after: string | undefined, limit: number, before?: string) =>
      store().changesIn(4, { after, before, limit, keep: before === undefined ? 'first' : 'last' })
    const b = {
      before: aCategory('b', { name: 'Second b' }),
      after: aCategory('b', { name: 'Third b' }),
    }
    const c = { before: aCategory('c'), after: aCategory('c', { retired: true }) }
    expect(await page(undefined, 9)).toEqual([b, c])
    expect(await page(undefined, 1)).toEqual([b])
    expect(await page('b', 1)).toEqual([c])
    expect(await page('c', 1)).toEqual([])
    expect(await page(undefined, 0)).toEqual([])
    expect(await page(undefined, 1, 'z')).toEqual([c])
    expect(await page(undefined, 9, 'z')).toEqual([b, c])
    expect(await page(undefined, 9, 'c')).toEqual([b])
    expect(await page('b', 9, 'c')).toEqual([])
    expect(await store().countChangesIn(4)).toBe(2)
  })

  it('has nothing before a category that a revision made, and no changes of a number that is no revision', async () => {
    await fill()
    expect(await store().changesIn(3, { limit: 9, keep: 'first' })).toEqual([
      { before: null, after: aCategory('c') },
      { before: null, after: aCategory('d') },
    ])
    for (const none of [0, -1, 5, 0.5, 2 ** 31]) {
      expect(await store().changesIn(none, { limit: 9, keep: 'first' }), String(none)).toEqual([])
      expect(await store().countChangesIn(none), String(none)).toBe(0)
    }
  })

  it('orders changes by their codes as computers do, whatever language the database sorts in', async () => {
    const codes = ['a-b', 'a1', 'ab', 'b']
    await store().append(
      0,
      codes.toReversed().map((code) => aCategory(code)),
      aNote,
    )
    const changes = await store().changesIn(1, { limit: 9, keep: 'first' })
    expect(changes.map(({ after }) => after.code)).toEqual(codes)
    const rest = await store().changesIn(1, { after: 'a-b', limit: 9, keep: 'first' })
    expect(rest.map(({ after }) => after.code)).toEqual(codes.slice(1))
  })

  it('tells how far an edit of many categories has come, up to the last', async () => {
    const told: [number, number][] = []
    const many = Array.from({ length: 2_500 }, (_, index) => aCategory(`c-${index}`))
    await store().append(0, many, aNote, (done, total) => told.push([done, total]))
    expect(told.at(-1)).toEqual([2_500, 2_500])
    expect(told.map(([done]) => done)).toEqual(told.map(([done]) => done).toSorted((a, b) => a - b))
  })
}

import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { ADMIN_KEY, type TestApp, testApp } from '../../helpers/testApp.ts'

let app: TestApp
beforeEach(async () => (app = await testApp()))
afterEach(() => app.close())

const FAULTS = '... on UserError { code message } ... on FaultyInputError { faults { pointer code } }'
const EDITED = `__typename ... on EditedCategory {
  category { code name retired changedInRevision catalogueRevision keepPowered { reason } modes { mode draws { typicalW } } }
  revision { number action reason at author { organisation keyId } changes { totalCount edges { node { code kind fields { pointer before after } } } } }
} ${FAULTS}`
const STALE = `... on StaleCategoryError {
  current { name changedInRevision } lastEdit { number reason author { organisation } } changedFields { pointer before after } }`
const LARGE =
  '... on LargeChangeError { count figures { pointer mode figure beforeW afterW yearFrom yearTo category } }'

/** The result of one mutation with an input, sent with the admin's key unless the test says otherwise. */
async function mutate(name: string, input: object, selection: string, key: string | null = ADMIN_KEY) {
  const type = `${name[0]!.toUpperCase()}${name.slice(1)}Input`
  const query = `mutation ($input: ${type}!) { ${name}(input: $input) { ${selection} } }`
  const request = app.send.post('/graphql')
  if (key !== null) void request.set('authorization', `Bearer ${key}`)
  const { status, body } = await request.send({ query, variables: { input } })
  if (status !== 200 || body.errors) throw new Error(`Answered ${status}: ${JSON.stringify(body)}`)
  return body.data[name]
}
const create = (input: object, key?: string | null) => mutate('createCategory', input, EDITED, key)
const change = (input: object) =>
  mutate('changeCategory', { reason: 'a test', ...input }, `${EDITED} ${STALE} ${LARGE}`)
const retire = (input: object) =>
  mutate('retireCategory', { reason: 'a test', ...input }, `${EDITED} ${STALE}`)
const restore = (input: object) =>
  mutate('restoreCategory', { reason: 'a test', ...input }, `${EDITED} ${STALE}`)
const revisionNow = () => app.deps.catalogueMemory.current().revision

const draw = { lowW: 0.5, typicalW: 1, highW: 3, provenance: { kind: 'SAMPLE' } }
const mode = { mode: 'NETWORKED_STANDBY', defaultHoursPerWeek: 100, draws: [draw] }
const lamp = {
  code: 'lava-lamp',
  name: 'Lava lamp',
  group: 'LIGHTING_AND_SMART_HOME',
  aliases: ['wax lamp'],
  defaultQuantity: 1,
  powerFactor: { low: 0.2, typical: 0.4, high: 0.6 },
  modes: [mode],
}

describe('createCategory', () => {
  test('makes a category and the revision that REST shows, too', async () => {
    const made = await create({ category: lamp, reason: 'Seen in many homes' })
    expect(made).toMatchObject({
      __typename: 'EditedCategory',
      category: { code: 'lava-lamp', retired: false, changedInRevision: 2, keepPowered: null },
      revision: {
        number: 2,
        action: 'CREATE',
        reason: 'Seen in many homes',
        at: '2026-01-31T12:00:00.000Z',
        author: { organisation: 'operator', keyId: expect.any(String) },
        changes: { totalCount: 1, edges: [{ node: { code: 'lava-lamp', kind: 'ADDED', fields: [] } }] },
      },
    })
    const { body } = await app.send.get('/v1/categories/lava-lamp').expect(200)
    expect(body).toMatchObject({ name: 'Lava lamp', modes: [{ mode: 'networked-standby' }] })
  })

  test('tells every fault of the trade at its place in the input', async () => {
    const draws = [{ ...draw, lowW: 9, provenance: { kind: 'PUBLISHED' } }]
    const refused = await create({
      category: { ...lamp, aliases: ['Telly'], modes: [{ ...mode, draws }] },
      reason: 'a test',
    })
    expect(refused.__typename).toBe('FaultyInputError')
    expect(refused.faults).toEqual([
      { pointer: '/category/modes/0/draws/0/lowW', code: 'range-out-of-order' },
      { pointer: '/category/modes/0/draws/0/provenance/citation', code: 'citation-missing' },
      { pointer: '/category/aliases/0', code: 'name-taken' },
    ])
    expect(revisionNow()).toBe(1)
  })

  test('tells faults of shape and of the reason', async () => {
    const shape = await create({
      category: { ...lamp, code: 'Lava Lamp', defaultQuantity: 0 },
      reason: 'a test',
    })
    expect(shape.faults).toEqual([
      { pointer: '/category/code', code: 'invalid-format' },
      { pointer: '/category/defaultQuantity', code: 'too-small' },
    ])
    const reason = await create({ category: lamp, reason: ' x ' })
    expect(reason.faults).toEqual([{ pointer: '/reason', code: 'too-small' }])
  })

  test('of a code that is taken is a conflict', async () => {
    const refused = await create({ category: { ...lamp, code: 'freezer' }, reason: 'a test' })
    expect(refused).toMatchObject({ __typename: 'ConflictError', code: 'category-exists' })
  })

  test('needs a key', async () => {
    const refused = await create({ category: lamp, reason: 'a test' }, null)
    expect(refused).toMatchObject({ __typename: 'AccessError', code: 'key-required' })
    expect(revisionNow()).toBe(1)
  })
})

describe('changeCategory', () => {
  test('changes what it names and nothing else', async () => {
    const changed = await change({ code: 'freezer', basedOn: 1, changes: { name: 'Chest freezer' } })
    expect(changed).toMatchObject({
      category: { name: 'Chest freezer', changedInRevision: 2, keepPowered: { reason: 'REFRIGERATION' } },
      revision: {
        action: 'CHANGE',
        changes: {
          edges: [
            { node: { fields: [{ pointer: '/name', before: '"Freezer"', after: '"Chest freezer"' }] } },
          ],
        },
      },
    })
  })

  test('with keepPowered: null takes it away', async () => {
    const { category } = await change({ code: 'freezer', basedOn: 1, changes: { keepPowered: null } })
    expect(category.keepPowered).toBeNull()
  })

  test('that changes nothing makes no revision', async () => {
    const same = await change({ code: 'freezer', basedOn: 1, changes: { name: 'Freezer' } })
    expect(same).toMatchObject({
      __typename: 'EditedCategory',
      revision: null,
      category: { changedInRevision: 1 },
    })
  })

  test('on a stale state tells what changed: by whom, why, and in which fields', async () => {
    await change({ code: 'freezer', basedOn: 1, changes: { name: 'Chest freezer' }, reason: 'People say so' })
    const late = await change({ code: 'freezer', basedOn: 1, changes: { name: 'Deep freezer' } })
    expect(late).toMatchObject({
      __typename: 'StaleCategoryError',
      code: 'stale-category',
      current: { name: 'Chest freezer', changedInRevision: 2 },
      lastEdit: { number: 2, reason: 'People say so', author: { organisation: 'operator' } },
      changedFields: [{ pointer: '/name', before: '"Freezer"', after: '"Chest freezer"' }],
    })
    expect(revisionNow()).toBe(2)
  })

  test('asks for confirm of a large change, figure by figure', async () => {
    const modes = [{ mode: 'STANDBY', defaultHoursPerWeek: 140, draws: [{ ...draw, highW: 10 }] }]
    const asked = await change({ code: 'television', basedOn: 1, changes: { modes } })
    expect(asked).toMatchObject({
      __typename: 'LargeChangeError',
      count: 1,
      figures: [
        {
          pointer: '/modes/0/draws/0/highW',
          mode: 'STANDBY',
          figure: 'highW',
          beforeW: 3,
          afterW: 10,
          yearFrom: null,
          yearTo: null,
          category: null,
        },
      ],
    })
    expect(revisionNow()).toBe(1)
    const confirmed = await change({ code: 'television', basedOn: 1, changes: { modes }, confirm: true })
    expect(confirmed.__typename).toBe('EditedCategory')
  })

  test('of an unknown code is not found', async () => {
    const refused = await change({ code: 'telly', basedOn: 1, changes: {} })
    expect(refused).toMatchObject({ __typename: 'NotFoundError', code: 'unknown-category' })
  })

  test('names faults at their place in the changes', async () => {
    const refused = await change({
      code: 'freezer',
      basedOn: 1,
      changes: { name: null, aliases: ['TV'], powerFactor: { low: 0.9, typical: 0.5, high: 2 } },
    })
    expect(refused.faults.map(({ pointer }: { pointer: string }) => pointer)).toEqual([
      '/changes/name',
      '/changes/powerFactor/high',
    ])
  })
})

describe('retireCategory and restoreCategory', () => {
  test('take a category out of sight and bring it back', async () => {
    const retired = await retire({ code: 'router', basedOn: 1 })
    expect(retired).toMatchObject({ category: { retired: true }, revision: { action: 'RETIRE' } })
    const stale = await restore({ code: 'router', basedOn: 1 })
    expect(stale).toMatchObject({ __typename: 'StaleCategoryError', lastEdit: { number: 2 } })
    const restored = await restore({ code: 'router', basedOn: 2 })
    expect(restored).toMatchObject({ category: { retired: false }, revision: { action: 'RESTORE' } })
  })
})

describe('restoreCatalogueRevision', () => {
  const back = (input: object) =>
    mutate(
      'restoreCatalogueRevision',
      { reason: 'a test', ...input },
      `__typename ... on RestoredCatalogueRevision { restored counts { added changed retired restored } revision { number action } }
       ... on StaleCatalogueError { newestRevision edits { number } changedCategories { code kind } } ${LARGE} ${FAULTS}`,
    )

  test('goes back to an older revision, as a new one', async () => {
    await create({ category: lamp, reason: 'a test' })
    await retire({ code: 'router', basedOn: 1 })
    expect(await back({ number: 1, basedOn: 3 })).toMatchObject({
      restored: 1,
      counts: { added: 0, changed: 0, retired: 1, restored: 1 },
      revision: { number: 4, action: 'RESTORE_REVISION' },
    })
    const { body } = await app.send.get('/v1/categories?limit=200')
    expect(body.items.map(({ code }: { code: string }) => code)).toContain('router')
    expect(body.items.map(({ code }: { code: string }) => code)).not.toContain('lava-lamp')
  })

  test('on a stale revision tells what came since', async () => {
    await retire({ code: 'router', basedOn: 1 })
    expect(await back({ number: 1, basedOn: 1 })).toMatchObject({
      __typename: 'StaleCatalogueError',
      newestRevision: 2,
      edits: [{ number: 2 }],
      changedCategories: [{ code: 'router', kind: 'RETIRED' }],
    })
  })

  test('to one that there is none of is not found', async () => {
    expect(await back({ number: 9, basedOn: 1 })).toMatchObject({
      __typename: 'NotFoundError',
      code: 'unknown-revision',
    })
  })
})

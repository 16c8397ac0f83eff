import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { editorOf, type Headers, own, ownTelevision } from '../rest/overlay/ownFigures.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'
import { everyFieldOf } from './everyFieldOf.ts'

let service: TestApp
let us: Headers
beforeEach(async () => {
  service = await testApp()
  us = await editorOf(service, 'our-utility')
})
afterEach(() => service.close())

const ask = async (query: string, variables: object = {}, headers: Headers = us) =>
  (await service.send.post('/graphql').set(headers).send({ query, variables }).expect(200)).body
const REFUSAL = `__typename ... on UserError { code message } ... on FaultyInputError { faults { pointer code } }
  ... on LargeChangeError { figures { figure beforeW afterW } }`
const EDITED = `... on EditedOverlay { overlayRevision revision { number action code reason changedFields { pointer } }
  category { code name layer changedInRevision catalogueRevision overlayRevision sampleData } }`
const mutate = async (name: string, type: string, input: object, headers: Headers = us) => {
  const query = `mutation ($input: ${type}!) { ${name}(input: $input) { ${REFUSAL} ${EDITED} } }`
  const { data, errors } = await ask(query, { input }, headers)
  expect(errors).toBeUndefined()
  return data[name]
}
const enums = (category: typeof ownTelevision) => ({
  ...category,
  group: 'VIDEO',
  modes: category.modes.map((mode) => ({
    ...mode,
    mode: 'STANDBY',
    draws: mode.draws.map((draw) => ({ ...draw, provenance: { ...draw.provenance, kind: 'PROGRAMME' } })),
  })),
})
const layInput = (changes: object = {}) => ({ category: enums(ownTelevision), reason: 'a test', ...changes })

describe('the mutations', () => {
  test('lay, change and remove a category of its own, each as one revision', async () => {
    const laid = await mutate('layCategory', 'LayCategoryInput', layInput())
    expect(laid).toMatchObject({
      overlayRevision: 1,
      revision: { number: 1, action: 'LAY', code: 'television', changedFields: [] },
      category: { layer: 'ORGANISATION', changedInRevision: 1, overlayRevision: 1, sampleData: false },
    })
    const input = { code: 'television', basedOn: 1, changes: { name: 'Ours' }, reason: 'a test' }
    const changed = await mutate('changeOverlayCategory', 'ChangeOverlayCategoryInput', input)
    expect(changed).toMatchObject({
      revision: { number: 2, action: 'CHANGE', changedFields: [{ pointer: '/name' }] },
      category: { name: 'Ours', changedInRevision: 2 },
    })
    const end = { code: 'television', basedOn: 2, reason: 'a test' }
    const removed = await mutate('removeOverlayCategory', 'RemoveOverlayCategoryInput', end)
    expect(removed).toMatchObject({ overlayRevision: 3, category: null, revision: { action: 'REMOVE' } })
  })

  test('refuse with typed errors: faults, large changes, what is stale or there already, what is not there', async () => {
    const large = layInput({
      category: enums({
        ...ownTelevision,
        modes: [
          { ...ownTelevision.modes[0]!, draws: [{ ...ownTelevision.modes[0]!.draws[0]!, typicalW: 3.5 }] },
        ],
      }),
    })
    expect(await mutate('layCategory', 'LayCategoryInput', large)).toMatchObject({
      __typename: 'LargeChangeError',
      figures: [{ figure: 'typicalW', beforeW: 1, afterW: 3.5 }],
    })
    const taken = layInput({ category: enums({ ...ownTelevision, aliases: ['decoder'] }) })
    expect(await mutate('layCategory', 'LayCategoryInput', taken)).toMatchObject({
      __typename: 'FaultyInputError',
      faults: [{ pointer: '/category/aliases/0', code: 'name-taken' }],
    })
    const stale = await mutate('layCategory', 'LayCategoryInput', layInput({ basedOn: 1 }))
    expect(stale).toMatchObject({ __typename: 'ConflictError', code: 'stale-overlay' })
    await mutate('layCategory', 'LayCategoryInput', layInput())
    const again = await mutate('layCategory', 'LayCategoryInput', layInput())
    expect(again).toMatchObject({ __typename: 'ConflictError', code: 'already-there' })
    const none = { code: 'router', basedOn: 1, reason: 'a test' }
    expect(await mutate('removeOverlayCategory', 'RemoveOverlayCategoryInput', none)).toMatchObject({
      __typename: 'NotFoundError',
      code: 'unknown-overlay-category',
    })
  })
})

describe('the queries', () => {
  test('list own categories and revisions as connections that page in both directions', async () => {
    for (const code of ['own-a', 'own-b', 'own-c'])
      await mutate(
        'layCategory',
        'LayCategoryInput',
        layInput({ category: enums({ ...ownTelevision, ...own(code) }) }),
      )
    const page = async (args: string) =>
      (
        await ask(
          `{ overlayCategories(${args}) { totalCount overlayRevision pageInfo { hasNextPage hasPreviousPage endCursor startCursor } edges { cursor node { code layer } } } }`,
        )
      ).data.overlayCategories
    const first = await page('first: 2')
    expect(first).toMatchObject({
      totalCount: 3,
      overlayRevision: 3,
      pageInfo: { hasNextPage: true, hasPreviousPage: false },
      edges: [{ node: { code: 'own-a', layer: 'ORGANISATION' } }, { node: { code: 'own-b' } }],
    })
    const rest = await page(`first: 2, after: "${first.pageInfo.endCursor}"`)
    expect(rest).toMatchObject({
      pageInfo: { hasNextPage: false, hasPreviousPage: true },
      edges: [{ node: { code: 'own-c' } }],
    })
    expect((await page(`last: 1, before: "${rest.edges[0].cursor}"`)).edges).toMatchObject([
      { node: { code: 'own-b' } },
    ])
    expect((await page('overlayRevision: 1')).edges).toMatchObject([{ node: { code: 'own-a' } }])
    const { data, errors } = await ask(
      `{ overlayRevisions(first: 2) { totalCount pageInfo { hasNextPage } edges { node ${everyFieldOf('OverlayRevision')} } } }`,
    )
    expect(errors).toBeUndefined()
    expect(data.overlayRevisions).toMatchObject({
      totalCount: 3,
      pageInfo: { hasNextPage: true },
      edges: [{ node: { number: 3, author: { organisation: 'our-utility' } } }, { node: { number: 2 } }],
    })
  })

  test('need a key that may edit', async () => {
    for (const field of ['overlayCategories', 'overlayRevisions']) {
      const { data, errors } = await ask(`{ ${field} { totalCount } }`, {}, {})
      expect([data[field], errors[0].extensions.reason]).toEqual([null, 'key-required'])
    }
  })

  test('answer categories, estimates and all else with the own figures, just as REST does', async () => {
    await mutate('layCategory', 'LayCategoryInput', layInput())
    const query = `{
      category(code: "tv") { layer overlayRevision }
      shared: category(code: "tv", overlayRevision: 0) { layer overlayRevision }
      categories(search: "telly") { overlayRevision edges { node { layer } } }
      estimate(input: { devices: [{ category: "television" }] }) { overlayRevision catalogueRevision
        devices { catalogueLayer powerW { expected low high } } total { energyKwhPerYear { expected } } }
      past: estimate(input: { overlayRevision: 0, devices: [{ category: "television" }] }) { overlayRevision devices { catalogueLayer } }
      evaluateReading(input: { category: "television", mode: STANDBY, reading: { current: { amperes: 0.1 } } }) { overlayRevision catalogueLayer sampleData }
      populationOfStock(input: { items: [{ category: "television", ownership: { exact: 0.9 } }], ladder: [{ name: "town", homes: 10 }] }) { overlayRevision items { catalogueLayer } }
    }`
    const { data, errors } = await ask(query)
    expect(errors).toBeUndefined()
    expect(data).toMatchObject({
      category: { layer: 'ORGANISATION', overlayRevision: 1 },
      shared: { layer: 'SHARED', overlayRevision: 0 },
      categories: { overlayRevision: 1, edges: [{ node: { layer: 'ORGANISATION' } }] },
      past: { overlayRevision: 0, devices: [{ catalogueLayer: 'SHARED' }] },
      evaluateReading: { overlayRevision: 1, catalogueLayer: 'ORGANISATION', sampleData: false },
      populationOfStock: { overlayRevision: 1, items: [{ catalogueLayer: 'ORGANISATION' }] },
    })
    const rest = await service.send
      .post('/v1/estimates')
      .set(us)
      .send({ devices: [{ category: 'television' }] })
    expect(data.estimate.devices[0]).toEqual({
      catalogueLayer: 'ORGANISATION',
      powerW: rest.body.devices[0].powerW,
    })
    expect(data.estimate.total.energyKwhPerYear.expected).toBe(rest.body.total.energyKwhPerYear.expected)
  })

  test('name of each category at named revisions another object: its id leads back to it', async () => {
    await mutate('layCategory', 'LayCategoryInput', layInput())
    const { data } = await ask(`{
      now: category(code: "tv") { id } shared: category(code: "tv", overlayRevision: 0) { id }
      both: category(code: "tv", catalogueRevision: 1, overlayRevision: 1) { id } }`)
    const ids = [data.now.id, data.shared.id, data.both.id]
    expect(new Set(ids).size).toBe(3)
    const { data: read } = await ask(
      `query ($ids: [ID!]!) { nodes(ids: $ids) { id ... on Category { layer } } }`,
      { ids },
    )
    expect(read.nodes).toEqual([
      { id: ids[0], layer: 'ORGANISATION' },
      { id: ids[1], layer: 'SHARED' },
      { id: ids[2], layer: 'ORGANISATION' },
    ])
  })
})

import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { ADMIN_KEY, type TestApp, testApp } from '../../helpers/testApp.ts'
import { ask, refused } from './ask.ts'

let app: TestApp
beforeEach(async () => (app = await testApp()))
afterEach(() => app.close())

const FAULTS = '... on UserError { code message } ... on FaultyInputError { faults { pointer code } }'
const REVISION =
  'revision { number action reason at author { organisation keyId } changes { of code kind fields { pointer before after } } }'
const STALE =
  '... on StaleReferenceError { lastEdit { number reason author { organisation } } changedFields { pointer before after } }'
const SELECTIONS = {
  Tariff: `__typename ${FAULTS} ${STALE} ... on EditedTariff { ${REVISION}
    tariff { code name retired sampleData changedInRevision tariff { currency __typename } } }
    ... on StaleTariffError { current { name changedInRevision } }`,
  EmissionFactor: `__typename ${FAULTS} ${STALE} ... on EditedEmissionFactor { ${REVISION}
    emissionFactor { code kind gases mark retired changedInRevision factor { kgCo2ePerKwh gridLoss } } }
    ... on StaleEmissionFactorError { current { code changedInRevision } }`,
}
/** Types that the result of one mutation does not have may not be selected in it. */
const selectionFor = (verb: string, name: keyof typeof SELECTIONS) =>
  verb === 'create'
    ? SELECTIONS[name].replace(STALE, '').replace(/\.\.\. on Stale\w+Error \{ current \{ \w+ \w+ \} \}/, '')
    : SELECTIONS[name]

async function mutate(
  verb: string,
  name: keyof typeof SELECTIONS,
  input: object,
  key: string | null = ADMIN_KEY,
) {
  const type = `${verb[0]!.toUpperCase()}${verb.slice(1)}${name}Input`
  const query = `mutation ($input: ${type}!) { ${verb}${name}(input: $input) { ${selectionFor(verb, name)} } }`
  const request = app.send.post('/graphql')
  if (key !== null) void request.set('authorization', `Bearer ${key}`)
  const { status, body } = await request.send({ query, variables: { input: { reason: 'a test', ...input } } })
  if (status !== 200 || body.errors) throw new Error(`Answered ${status}: ${JSON.stringify(body)}`)
  return body.data[`${verb}${name}`]
}

const blocks = {
  block: {
    currency: 'EUR',
    per: 'MONTH',
    blocks: [{ upToKwh: 200, pricePerKwh: 0.2 }, { pricePerKwh: 0.3 }],
  },
}
const tariff = { code: 'blocks-2026', name: 'Blocks of 2026', tariff: blocks, source: 'invented sample' }
const factor = {
  code: 'nowhere-2025',
  regionCode: 'nowhere',
  region: 'Nowhere',
  kind: 'MARGINAL',
  year: 2025,
  factor: { kgCo2ePerKwh: 0.4, gridLoss: 0.05 },
  gases: 'CO2+CH4+N2O',
  source: 'Report on a grid that there is none of, 2025',
  mark: 'M',
}
const revisionNow = () => app.deps.referenceMemory.current().revision

describe('creating', () => {
  test('makes a tariff and the revision that REST shows, too', async () => {
    const made = await mutate('create', 'Tariff', { tariff, reason: 'New price list' })
    expect(made).toMatchObject({
      __typename: 'EditedTariff',
      tariff: { code: 'blocks-2026', retired: false, sampleData: true, changedInRevision: 2 },
      revision: {
        number: 2,
        action: 'CREATE',
        reason: 'New price list',
        at: '2026-01-31T12:00:00.000Z',
        author: { organisation: 'operator', keyId: expect.any(String) },
        changes: [{ of: 'TARIFF', code: 'blocks-2026', kind: 'ADDED', fields: [] }],
      },
    })
    const { body } = await app.send.get('/v1/tariffs/blocks-2026').expect(200)
    expect(body.tariff).toEqual({ kind: 'block', ...blocks.block, per: 'month' })
  })

  test('makes an emission factor, average and marginal kept apart', async () => {
    const made = await mutate('create', 'EmissionFactor', { emissionFactor: factor })
    expect(made.emissionFactor).toMatchObject({ kind: 'MARGINAL', gases: 'CO2+CH4+N2O', mark: 'M' })
    const { body } = await app.send.get('/v1/emission-factors?region=nowhere&kind=marginal').expect(200)
    expect(body.items).toEqual([{ ...factor, kind: 'marginal', retired: false }])
  })

  test('tells every fault at its place in the input', async () => {
    const falling = {
      block: { ...blocks.block, blocks: [{ upToKwh: 0, pricePerKwh: -1 }, { pricePerKwh: 0.3 }] },
    }
    const wrong = await mutate('create', 'Tariff', {
      tariff: { ...tariff, code: 'two words', tariff: falling },
    })
    expect(wrong.faults).toEqual([
      { pointer: '/tariff/code', code: 'invalid-format' },
      { pointer: '/tariff/tariff/block/blocks/0/upToKwh', code: 'too-small' },
      { pointer: '/tariff/tariff/block/blocks/0/pricePerKwh', code: 'too-small' },
      { pointer: '/tariff/tariff/block/blocks/0/upToKwh', code: 'blocks-out-of-order' },
    ])
    const uncited = await mutate('create', 'EmissionFactor', { emissionFactor: { ...factor, source: 'x' } })
    expect(uncited).toMatchObject({
      __typename: 'FaultyInputError',
      faults: [{ pointer: '/emissionFactor/source', code: 'citation-missing' }],
    })
    expect((await mutate('create', 'Tariff', { tariff, reason: 'x' })).faults).toEqual([
      { pointer: '/reason', code: 'too-small' },
    ])
    expect(revisionNow()).toBe(1)
  })

  test('a code that is taken is a conflict, and a missing key an access error', async () => {
    const taken = { ...tariff, code: 'sample-flat-eur' }
    expect(await mutate('create', 'Tariff', { tariff: taken })).toMatchObject({
      __typename: 'ConflictError',
      code: 'tariff-exists',
    })
    expect(await mutate('create', 'Tariff', { tariff }, null)).toMatchObject({
      __typename: 'AccessError',
      code: 'key-required',
    })
  })
})

const EXISTING = [
  ['Tariff', 'sample-flat-eur', 'tariff', { name: 'Renamed' }, '/name'],
  ['EmissionFactor', 'world-2023', 'emissionFactor', { region: 'Renamed' }, '/region'],
] as const

describe.each(EXISTING)('%s', (name, code, field, changes, pointer) => {
  test('is changed in the fields that are named, and in no other', async () => {
    const changed = await mutate('change', name, { code, basedOn: 1, changes })
    expect(changed[field]).toMatchObject({ code, changedInRevision: 2 })
    expect(changed.revision.changes[0].fields).toMatchObject([{ pointer, after: '"Renamed"' }])
    const same = await mutate('change', name, { code, basedOn: 2, changes })
    expect([same.revision, revisionNow()]).toEqual([null, 2])
  })

  test('on a stale state tells what changed: by whom, why, and in which fields', async () => {
    await mutate('change', name, { code, basedOn: 1, changes, reason: 'People say so' })
    for (const [verb, more] of [
      ['change', { changes }],
      ['retire', {}],
      ['restore', {}],
    ] as const)
      expect(await mutate(verb, name, { code, basedOn: 1, ...more })).toMatchObject({
        __typename: `Stale${name}Error`,
        current: { changedInRevision: 2 },
        lastEdit: { number: 2, reason: 'People say so', author: { organisation: 'operator' } },
        changedFields: [{ pointer, after: '"Renamed"' }],
      })
  })

  test('is retired and brought back; what is not there is not found', async () => {
    const retired = await mutate('retire', name, { code, basedOn: 1 })
    expect(retired[field]).toMatchObject({ retired: true, changedInRevision: 2 })
    const restored = await mutate('restore', name, { code, basedOn: 2 })
    expect(restored[field]).toMatchObject({ retired: false, changedInRevision: 3 })
    expect(await mutate('retire', name, { code: 'nothing', basedOn: 1 })).toMatchObject({
      __typename: 'NotFoundError',
    })
  })
})

test('a tariff is replaced as a whole where the changes name it, never mixed with the one before', async () => {
  await mutate('change', 'Tariff', { code: 'sample-flat-eur', basedOn: 1, changes: { tariff: blocks } })
  const { body } = await app.send.get('/v1/tariffs/sample-flat-eur')
  expect(body.tariff).toEqual({ kind: 'block', ...blocks.block, per: 'month' })
})

describe('the history', () => {
  test('is a connection, newest first, whose members are nodes', async () => {
    await mutate('retire', 'Tariff', { code: 'sample-flat-eur', basedOn: 1 })
    const { referenceRevisions } = await ask(
      app,
      '{ referenceRevisions(first: 1) { totalCount edges { node { id number action } } pageInfo { hasNextPage } } }',
    )
    const { id } = referenceRevisions.edges[0].node
    expect(referenceRevisions).toEqual({
      totalCount: 2,
      edges: [{ node: { id, number: 2, action: 'RETIRE' } }],
      pageInfo: { hasNextPage: true },
    })
    const { node } = await ask(app, `{ node(id: "${id}") { ... on ReferenceRevision { number } } }`)
    expect(node).toEqual({ number: 2 })
  })

  test('reads lists and single ones at a revision, and estimates with it', async () => {
    await mutate('change', 'Tariff', {
      code: 'sample-flat-eur',
      basedOn: 1,
      changes: { tariff: { flat: { currency: 'EUR', pricePerKwh: 0.6 } } },
    })
    await mutate('retire', 'Tariff', { code: 'sample-flat-eur', basedOn: 2 })
    const priced = '{ retired changedInRevision tariff { ... on FlatTariff { pricePerKwh } } }'
    const answer = await ask(
      app,
      `{ then: tariff(code: "sample-flat-eur", referenceRevision: 1) ${priced}
         now: tariff(code: "sample-flat-eur") ${priced}
         tariffs { code } all: tariffs(includeRetired: true) { code } past: tariffs(referenceRevision: 1) { code } }`,
    )
    expect(answer).toEqual({
      then: { retired: false, changedInRevision: 1, tariff: { pricePerKwh: 0.3 } },
      now: { retired: true, changedInRevision: 3, tariff: { pricePerKwh: 0.6 } },
      tariffs: [],
      all: [{ code: 'sample-flat-eur' }],
      past: [{ code: 'sample-flat-eur' }],
    })
    const estimate = (more: string) =>
      ask(
        app,
        `{ estimate(input: { devices: [{ category: "router" }] ${more} }) { referenceRevision used { standbyPricePerKwh } warnings { code } } }`,
      )
    const past = (await estimate('referenceRevision: 1')).estimate
    expect([past.referenceRevision, past.used.standbyPricePerKwh]).toEqual([1, 0.3])
    const now = (await estimate('tariffDate: "2026-01-01"')).estimate
    expect([now.referenceRevision, now.used.standbyPricePerKwh]).toEqual([3, 0.6])
    expect(now.warnings).toContainEqual({ code: 'tariff-retired' })
  })

  test('a revision that there is none of is NOT_FOUND', async () => {
    const { errors } = await refused(
      app,
      '{ referenceRevision(number: 9) { number } tariff(code: "sample-flat-eur", referenceRevision: 9) { code } }',
    )
    expect(errors.map((error: { extensions: object }) => error.extensions)).toMatchObject([
      { code: 'NOT_FOUND', reason: 'unknown-reference-revision', newest: 1 },
      { code: 'NOT_FOUND', reason: 'unknown-reference-revision', newest: 1 },
    ])
  })
})

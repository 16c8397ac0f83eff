import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { READINGS_W, readHomes } from './readHomes.ts'

let client: Awaited<ReturnType<typeof readHomes>>
beforeEach(async () => {
  client = await readHomes()
  await client.homes(READINGS_W)
})
afterEach(() => client.app.close())

const FIGURE = 'percentile proposedW intervalLowW intervalHighW intervalCoverage todayW ratio largerThanNoise'
const PROPOSAL = `category categoryName mode yearFrom yearTo version status n households organisations coverageProbability
  low { ${FIGURE} } typical { ${FIGURE} } high { ${FIGURE} } largerThanNoise
  today { yearFrom yearTo lowW typicalW highW provenance { kind citation n } } todayIsSampleData
  outliers { rule leftIn lowerFenceW upperFenceW count outsideW } leftOut { severalDevices notStable noFittingYear }
  method rejection { n reason at author { organisation keyId } } openAgainAt openAgainRule`
const ONE = `{ catalogueProposal(category: "amplifier", mode: STANDBY) { ${PROPOSAL} } }`
const ERRORS = `... on UserError { code message } ... on FaultyInputError { faults { pointer code } }
  ... on StaleProposalError { current { n version } }`

type Headers = Record<string, string>
async function run(query: string, variables: object = {}, as: Headers = client.editor) {
  const { status, body } = await client.app.send.post('/graphql').set(as).send({ query, variables })
  expect(status).toBe(200)
  return body
}
const answer = async (name: 'accept' | 'reject', input: object, selection: string, as?: Headers) => {
  const type = name === 'accept' ? 'AcceptProposalInput' : 'RejectProposalInput'
  const query = `mutation ($input: ${type}!) { ${name}Proposal(input: $input) { __typename ${selection} ${ERRORS} } }`
  const { data, errors } = await run(query, { input }, as)
  expect(errors).toBeUndefined()
  return data[`${name}Proposal`]
}
const proposal = async () => ({
  category: 'amplifier',
  mode: 'STANDBY',
  basedOn: (await run(ONE)).data.catalogueProposal.version,
})
const LARGE = '... on LargeChangeError { count }'

describe('proposals over GraphQL', () => {
  test('have the figures that REST has, alone and in the list', async () => {
    const { years, ...rest } = (await client.get(client.amplifier).expect(200)).body
    expect(years).toBe('all')
    const inWords = {
      ...rest,
      mode: 'STANDBY',
      status: 'OPEN',
      today: { ...rest.today, provenance: { ...rest.today.provenance, kind: 'SAMPLE' } },
    }
    expect((await run(ONE)).data.catalogueProposal).toEqual(inWords)
    const list = `{ catalogueProposals { edges { node { ${PROPOSAL} } } pageInfo { hasNextPage } } }`
    expect((await run(list)).data.catalogueProposals).toEqual({
      edges: [{ node: inWords }],
      pageInfo: { hasNextPage: false },
    })
  })

  test('come in pages from either end, with cursors that are good for REST', async () => {
    for (const category of ['television', 'game-console']) await client.homes(READINGS_W, category)
    const page = async (given: string) => {
      const query = `{ catalogueProposals(${given}) { edges { cursor node { category } } pageInfo { hasNextPage hasPreviousPage endCursor } } }`
      return (await run(query)).data.catalogueProposals
    }
    const first = await page('first: 1')
    expect([first.edges[0].node.category, first.pageInfo.hasNextPage]).toEqual(['amplifier', true])
    const last = await page('last: 2')
    expect(last.edges.map(({ node }: { node: { category: string } }) => node.category)).toEqual([
      'game-console',
      'television',
    ])
    expect(last.pageInfo).toMatchObject({ hasNextPage: false, hasPreviousPage: true })
    const between = await page(
      `first: 5, after: "${first.pageInfo.endCursor}", before: "${last.edges[1].cursor}"`,
    )
    expect(between.edges).toMatchObject([{ node: { category: 'game-console' } }])
    const rest = await client.get(`${client.PATH}?cursor=${first.pageInfo.endCursor}`).expect(200)
    expect(rest.body.items).toHaveLength(2)
  })

  test('are found by their id, by editors of the operator alone', async () => {
    const { id } = (await run(ONE.replace('{ category ', '{ id category '))).data.catalogueProposal
    const query = `{ node(id: "${id as string}") { ... on CatalogueProposal { id n } } }`
    expect((await run(query)).data.node).toEqual({ id, n: 12 })
    expect((await run(query, {}, {})).data.node).toBeNull()
    const theirs = await client.keyOf('first-programme', 'catalogue:edit')
    expect((await run(query, {}, theirs)).data.node).toBeNull()
  })

  test('are an error where there are none, and for whoever may not see them', async () => {
    const none = await run('{ catalogueProposal(category: "router", mode: NETWORKED_STANDBY) { n } }')
    expect([none.data.catalogueProposal, none.errors[0].extensions.reason]).toEqual([
      null,
      'unknown-proposal',
    ])
    for (const query of ['{ catalogueProposals { edges { node { n } } } }', ONE]) {
      const { data, errors } = await run(query, {}, await client.keyOf('first-programme', 'catalogue:edit'))
      expect(Object.values(data)).toEqual([null])
      expect(errors[0].extensions.reason).toBe('operator-only')
    }
  })

  test('are accepted once very large changes are confirmed', async () => {
    const input = { proposal: await proposal(), reason: 'Enough readings' }
    expect(await answer('accept', input, LARGE)).toMatchObject({ __typename: 'LargeChangeError', count: 1 })
    const edited = `... on EditedCategory { category { modes { draws { typicalW provenance { kind n } } } } revision { action number } }`
    expect(await answer('accept', { ...input, confirm: true }, edited)).toEqual({
      __typename: 'EditedCategory',
      category: { modes: [{ draws: [{ typicalW: 1.65, provenance: { kind: 'PROGRAMME', n: 12 } }] }] },
      revision: { action: 'ACCEPT_PROPOSAL', number: 2 },
    })
  })

  test('are rejected with a reason, once', async () => {
    const rejected = `... on CatalogueProposal { status openAgainAt rejection { reason } }`
    const input = { proposal: await proposal(), reason: 'Wait for more' }
    expect(await answer('reject', input, rejected)).toEqual({
      __typename: 'CatalogueProposal',
      status: 'REJECTED',
      openAgainAt: 20,
      rejection: { reason: 'Wait for more' },
    })
    const again = { ...input, proposal: await proposal() }
    expect(await answer('reject', again, rejected)).toMatchObject({
      __typename: 'ConflictError',
      code: 'proposal-not-open',
    })
  })

  test('refuse answers to a state that has passed, blank reasons and other organisations', async () => {
    const input = { proposal: await proposal(), reason: 'A reason' }
    await client.homes([1.9])
    for (const name of ['accept', 'reject'] as const) {
      expect(await answer(name, input, '')).toMatchObject({
        __typename: 'StaleProposalError',
        code: 'stale-proposal',
        current: { n: 13, version: (await proposal()).basedOn },
      })
      expect(await answer(name, { ...input, reason: '' }, '')).toMatchObject({
        __typename: 'FaultyInputError',
        faults: [{ pointer: '/reason' }],
      })
      const theirs = await client.keyOf('first-programme', 'catalogue:edit')
      expect(await answer(name, input, '', theirs)).toMatchObject({
        __typename: 'AccessError',
        code: 'operator-only',
      })
    }
  })
})

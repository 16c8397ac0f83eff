import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { estimateSchema } from '../../../src/schemas/estimate.ts'
import { expectProblem, faultsOf } from '../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'
import { answerOf } from '../graphql/answerOf.ts'
import { ask, refused } from '../graphql/ask.ts'
import { everyFieldOf } from '../graphql/everyFieldOf.ts'

let service: TestApp
beforeAll(async () => (service = await testApp()))
afterAll(() => service.close())

const estimate = (body: object) => service.send.post('/v1/estimates').send(body)
const QUERY = `query ($input: EstimateInput!) { estimate(input: $input)${everyFieldOf('Estimate')} }`
const devices = [{ category: 'television' }, { category: 'router', quantity: 2 }]
const drawn = { method: 'monte-carlo', draws: 2_000, seed: 7, devices }
const GRAPHQL = { ...drawn, method: 'MONTE_CARLO' }

describe('an estimate by Monte Carlo over REST', () => {
  test('names draws and seed, and gives the same bytes for the same request', async () => {
    const [first, second] = [await estimate(drawn), await estimate(drawn)]
    expect(first.status).toBe(200)
    expect(estimateSchema.parse(first.body).used.methodVersion).toMatch(
      /^\d+\.\d+\.\d+\+monte-carlo\.2000\.7$/,
    )
    expect(second.text).toBe(first.text)
  })

  test('moves with the seed, and stays near what convolution gives', async () => {
    const totals = await Promise.all(
      [drawn, { ...drawn, seed: 8 }, { devices }].map(async (body) => {
        const answer = await estimate(body).expect(200)
        return estimateSchema.parse(answer.body).total.energyKwhPerYear
      }),
    )
    const [seven, eight, convolved] = totals
    expect(seven).not.toEqual(eight)
    const width = convolved!.high - convolved!.low
    for (const end of ['expected', 'low', 'high'] as const)
      expect(Math.abs(seven![end] - convolved![end])).toBeLessThan(0.15 * width)
  })

  test('takes seed 0, the least and the most draws', async () => {
    const versions = [1_000, 100_000].map(async (draws) => {
      const { body } = await estimate({
        ...drawn,
        draws,
        seed: 0,
        devices: [{ category: 'television' }],
      }).expect(200)
      return estimateSchema.parse(body).used.methodVersion
    })
    expect((await Promise.all(versions)).map((version) => version.split('+')[1])).toEqual([
      'monte-carlo.1000.0',
      'monte-carlo.100000.0',
    ])
  })

  test.each([
    ['too few draws', { draws: 999 }, '/draws too-small'],
    ['too many draws', { draws: 100_001 }, '/draws too-big /draws too-many-draws'],
    ['half a draw', { draws: 1_000.5 }, '/draws invalid-type'],
    ['a seed below zero', { seed: -1 }, '/seed too-small'],
    ['a seed that GraphQL could not hold', { seed: 2 ** 31 }, '/seed too-big'],
    ['an unknown method', { method: 'guess' }, '/method invalid-value'],
    [
      'draws and seed of convolution',
      { method: 'convolution' },
      '/draws needs-monte-carlo /seed needs-monte-carlo',
    ],
  ])('refuses %s', async (_, more, faults) => {
    const many = Array.from({ length: 10 }, () => ({ category: 'television' }))
    const problem = expectProblem(await estimate({ ...drawn, devices: many, ...more }), 422, 'faulty-input')
    expect(faultsOf(problem).join(' ')).toBe(faults)
  })

  test('is refused with the other faults of the request, all at once', async () => {
    const answer = await estimate({ draws: 5_000, devices: [{ category: 'no such thing' }] })
    expect(faultsOf(expectProblem(answer, 422, 'faulty-input'))).toEqual([
      '/devices/0/category unknown-category',
      '/draws needs-monte-carlo',
    ])
  })
})

describe('an estimate by Monte Carlo over GraphQL', () => {
  test('has the figures of REST, every field of them', async () => {
    const { body } = await estimate(drawn).expect(200)
    const answer = await ask(service, QUERY, { input: GRAPHQL })
    expect(answer.estimate).toEqual(answerOf(estimateSchema.parse(body), 'Estimate'))
  })

  test('has the faults of REST', async () => {
    const input = { ...GRAPHQL, method: 'CONVOLUTION', seed: -1 }
    const { errors } = await refused(service, QUERY, { input })
    const rest = await estimate({ ...drawn, method: 'convolution', seed: -1 })
    expect(errors[0].extensions.errors).toEqual(rest.body.errors)
    expect(rest.body.errors).toHaveLength(3)
  })
})

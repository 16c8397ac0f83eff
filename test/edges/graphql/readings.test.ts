import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { householdOfInput } from '../../../src/edges/graphql/householdOfInput.ts'
import { GRAPHQL_LIMITS, SAMPLES_PER_FIELD } from '../../../src/edges/graphql/limits.ts'
import { evaluateReading } from '../../../src/useCases/evaluateReading.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'
import { SAMPLE_READINGS } from '../sampleReadings.ts'
import { answerOf } from './answerOf.ts'
import { ask, refused } from './ask.ts'
import { everyFieldOf } from './everyFieldOf.ts'

const EVERYTHING = `query ($input: ReadingEvaluationInput!) { evaluateReading(input: $input)${everyFieldOf('ReadingEvaluation')} }`

let app: TestApp
beforeAll(async () => {
  app = await testApp()
})
afterAll(() => app.close())

const pointersOf = async (input: unknown) => {
  const { errors, data, status } = await refused(app, EVERYTHING, { input })
  expect({ status, data, count: errors.length }).toEqual({
    status: 200,
    data: { evaluateReading: null },
    count: 1,
  })
  expect(errors[0].extensions.code).toBe('BAD_USER_INPUT')
  return errors[0].extensions.errors.map(
    ({ pointer, code }: { pointer: string; code: string }) => `${pointer} ${code}`,
  )
}

describe('evaluateReading', () => {
  test.each(SAMPLE_READINGS)(
    'has the figures of the use case for $kind, every field',
    async ({ input, body }) => {
      const { evaluateReading: answer } = await ask(app, EVERYTHING, { input })
      const expected = await evaluateReading(
        app.deps,
        { caller: null, requestId: 'a-request' },
        { raw: body, value: body, faults: [] },
      )
      expect(answer).toEqual(answerOf(expected, 'ReadingEvaluation'))
    },
  )

  test.each(SAMPLE_READINGS)('has the figures of REST for $kind', async ({ input, body }) => {
    const { evaluateReading: answer } = await ask(app, EVERYTHING, { input })
    const rest = await app.send.post('/v1/readings/evaluate').send(body)
    expect(answer).toEqual(answerOf(rest.body, 'ReadingEvaluation'))
  })

  test.each(SAMPLE_READINGS)('takes $kind to the shape that REST reads', ({ input, body }) => {
    const asCoerced = JSON.parse(
      JSON.stringify(input).replace(
        /"(mode|preset|orientation)":"([A-Z_]+)"/g,
        (_, name: string, value: string) => `"${name}":"${value.toLowerCase().replaceAll('_', '-')}"`,
      ),
    )
    expect(householdOfInput(asCoerced)).toEqual(body)
  })

  test('takes a null for what is left out', async () => {
    const bare = { reading: { power: { watts: 2 } } }
    const nulls = { ...bare, supply: null, meters: null, category: null, mode: null, quantity: null }
    expect(await ask(app, EVERYTHING, { input: nulls })).toEqual(await ask(app, EVERYTHING, { input: bare }))
  })
})

describe('a bad reading', () => {
  test('is answered with every fault at once, at the paths of the GraphQL input', async () => {
    expect(
      (
        await pointersOf({
          category: 'toaster oven',
          quantity: 0,
          supply: { volts: 12, tolerancePercent: 5, hertz: 50 },
          meters: [
            { id: 'm', preset: 'SMART_PLUG', counts: 1 },
            { id: 'm', percentOfReading: 1 },
          ],
          reading: { samples: { watts: [1, -1, -2], intervalSeconds: 0, meterId: 'n' } },
        })
      ).filter((fault: string) => !fault.startsWith('/meters/0')),
    ).toEqual(
      expect.arrayContaining([
        '/category unknown-category',
        '/quantity too-small',
        '/supply/volts too-small',
        '/meters/1/id duplicate-id',
        '/meters/1/counts required',
        '/meters/1/resolution required',
        '/reading/samples/watts/1 too-small',
        '/reading/samples/watts/2 too-small',
        '/reading/samples/intervalSeconds too-small',
        '/reading/samples/meterId unknown-meter',
      ]),
    )
  })

  test('of a surface that is no warmer than the room is refused at its own path', async () => {
    const thermal = {
      surfaceTemperatureC: 20,
      ambientTemperatureC: 20,
      areaM2: 0.01,
      orientation: 'VERTICAL',
    }
    expect(await pointersOf({ reading: { thermal } })).toEqual([
      '/reading/thermal/surfaceTemperatureC surface-not-warmer',
    ])
  })

  test('of an accuracy with neither figures nor class is refused', async () => {
    const faults = await pointersOf({ reading: { power: { watts: 1, accuracy: {} } } })
    for (const fault of faults) expect(fault).toMatch(/^\/reading\/power\/accuracy/)
  })

  test.each([
    ['of the input', { reading: { power: { watts: 1 } }, surprise: 1 }],
    ['of a reading', { reading: { thermal: { surprise: 1 } } }],
    ['of an accuracy', { reading: { power: { watts: 1, accuracy: { preset: 'SMART_PLUG', surprise: 1 } } } }],
  ])('an unknown field %s is refused, not dropped', async (_, input) => {
    const { status, errors } = await refused(app, EVERYTHING, { input })
    expect(status).toBe(400)
    expect(JSON.stringify(errors)).toContain('\\"surprise\\" is not defined')
  })

  test('of two kinds is refused', async () => {
    const reading = { power: { watts: 1 }, thermal: null }
    const { status } = await refused(app, EVERYTHING, { input: { reading } })
    expect(status).toBe(400)
  })

  test('of an unknown catalogue revision is NOT_FOUND', async () => {
    const input = { reading: { power: { watts: 1 } }, catalogueRevision: 99 }
    const { errors } = await refused(app, EVERYTHING, { input })
    expect(errors[0].extensions).toEqual({ code: 'NOT_FOUND', reason: 'unknown-revision', newest: 1 })
  })
})

describe('a long series', () => {
  const COUNT = 90_000
  const samples = { watts: Array.from({ length: COUNT }, () => 2), intervalSeconds: 1 }
  /** The fewest aliases under which the samples alone cost more than an operation may. */
  const TOO_MANY = Math.ceil((GRAPHQL_LIMITS.cost * SAMPLES_PER_FIELD) / COUNT)
  const aliased = (field: string) => Array.from({ length: TOO_MANY }, (_, i) => `a${i}: ${field}`).join(' ')

  test('is evaluated once, and costs too much under so many aliases that the work would be another size', async () => {
    const input = { reading: { samples } }
    const once = 'query ($input: ReadingEvaluationInput!) { evaluateReading(input: $input) { kind } }'
    expect((await ask(app, once, { input })).evaluateReading).toEqual({ kind: 'SAMPLES' })
    const many = `query ($input: ReadingEvaluationInput!) { ${aliased('evaluateReading(input: $input) { kind }')} }`
    const { status, errors } = await refused(app, many, { input })
    expect([status, errors[0].extensions.reason]).toEqual([400, 'too-costly'])
    expect(TOO_MANY).toBeLessThan(GRAPHQL_LIMITS.aliases)
  })

  test('counts in an estimate, too', async () => {
    const input = { devices: [{ category: 'TV', modes: [{ mode: 'STANDBY', reading: { samples } }] }] }
    const many = `query ($input: EstimateInput!) { ${aliased('estimate(input: $input) { currency }')} }`
    const { status, errors } = await refused(app, many, { input })
    expect([status, errors[0].extensions.reason]).toEqual([400, 'too-costly'])
  })
})

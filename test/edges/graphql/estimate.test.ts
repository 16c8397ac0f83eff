import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Household } from '../../../src/core/inventory/household.ts'
import { householdOfInput } from '../../../src/edges/graphql/householdOfInput.ts'
import { pointerIntoInput } from '../../../src/edges/graphql/pointerIntoInput.ts'
import { estimateHousehold } from '../../../src/useCases/estimateHousehold.ts'
import { testApp, type TestApp } from '../../helpers/testApp.ts'
import { answerOf } from './answerOf.ts'
import { ask, refused } from './ask.ts'
import { household, input } from './sampleHousehold.ts'
import { everyFieldOf } from './everyFieldOf.ts'

const EVERYTHING = `query ($input: EstimateInput!) { estimate(input: $input)${everyFieldOf('Estimate')} }`

let app: TestApp
beforeAll(async () => {
  app = await testApp()
})
afterAll(() => app.close())

const resultOf = (value: Household) =>
  estimateHousehold(app.deps, { caller: null, requestId: 'a-request' }, { raw: value, value, faults: [] })
const faultsOf = async (given: unknown) => {
  const { errors, data, status } = await refused(app, EVERYTHING, { input: given })
  expect({ status, data, count: errors.length }).toEqual({ status: 200, data: { estimate: null }, count: 1 })
  expect(errors[0].extensions.code).toBe('BAD_USER_INPUT')
  return errors[0].extensions.errors as { pointer: string; code: string; message: string }[]
}

describe('an estimate', () => {
  test('has the figures of the use case, every field of them, whatever was read', async () => {
    const { estimate } = await ask(app, EVERYTHING, { input })
    expect(estimate).toEqual(answerOf(await resultOf(household), 'Estimate'))
    expect(estimate.devices.map(({ confidence }: { confidence: string }) => confidence)).toContain(
      'PARTLY_MEASURED',
    )
    expect(estimate.used.tariff).toMatchObject({ __typename: 'TwoPartTariff', rounding: 'HALF_UP' })
  })

  test('needs the categories alone', async () => {
    const { estimate } = await ask(app, EVERYTHING, { input: { devices: [{ category: 'television' }] } })
    expect(estimate).toEqual(answerOf(await resultOf({ devices: [{ category: 'television' }] }), 'Estimate'))
  })

  test('takes a null for what is left out', async () => {
    const left = { devices: [{ category: 'television', modes: [{ mode: 'STANDBY' }] }] }
    const nulls = {
      ...{
        supply: null,
        tariff: null,
        tariffCode: null,
        emissionFactor: null,
        annualUseKwh: null,
        meters: null,
      },
      devices: [
        {
          category: 'television',
          id: null,
          quantity: null,
          modes: [{ mode: 'STANDBY', hoursPerWeek: null, reading: null }],
        },
      ],
    }
    expect(await ask(app, EVERYTHING, { input: nulls })).toEqual(await ask(app, EVERYTHING, { input: left }))
  })

  test('can be asked for by GET, with the same figures', async () => {
    const query =
      '{ estimate(input: { devices: [{ category: "tv", modes: [{ mode: STANDBY, reading: { power: { watts: 1 } } }] }] }) { total { powerW { expected } } } }'
    const answer = await app.send.get('/graphql').query({ query }).set('apollo-require-preflight', '1')
    expect(answer.status).toBe(200)
    expect(answer.body).toEqual({ data: await ask(app, query) })
  })
})

describe('bad input', () => {
  test('is answered with every fault of shape and of the trade at once, at the paths of the GraphQL input', async () => {
    const faults = await faultsOf({
      supply: { volts: 12, tolerancePercent: 5, hertz: 55 },
      tariff: { flat: { currency: 'euro', pricePerKwh: -1 } },
      weeksPerYear: 60,
      meters: [{ id: 'a b', percentOfReading: 1, counts: 1, resolution: 1 }],
      devices: [
        {
          category: 'toaster oven',
          modes: [
            { mode: 'STANDBY', reading: { current: { amperes: -1, loops: 0, powerFactor: { exact: 2 } } } },
          ],
        },
        {
          category: 'television',
          modes: [
            {
              mode: 'STANDBY',
              hoursPerWeek: { exact: 200 },
              reading: {
                apparentPower: {
                  voltAmperes: 5,
                  powerFactor: { range: { low: 0.6, typical: 0.5, high: 0.4 } },
                },
              },
            },
            { mode: 'STANDBY', hoursPerWeek: { range: { low: 5, typical: 3, high: 4 } } },
          ],
        },
        {
          category: 'router',
          modes: [{ mode: 'IDLE', reading: { power: { watts: 1, meterId: 'nowhere' } } }],
        },
      ],
    })
    expect(faults.map(({ pointer }) => pointer).sort()).toEqual([
      '/devices/0/category',
      '/devices/0/modes/0/reading/current/amperes',
      '/devices/0/modes/0/reading/current/loops',
      '/devices/0/modes/0/reading/current/powerFactor/exact',
      '/devices/1/modes',
      '/devices/1/modes/0/hoursPerWeek/exact',
      '/devices/1/modes/0/reading/apparentPower/powerFactor/range/high',
      '/devices/1/modes/0/reading/apparentPower/powerFactor/range/low',
      '/devices/1/modes/1/hoursPerWeek/range/low',
      '/devices/1/modes/1/mode',
      '/devices/2/modes/0/hoursPerWeek',
      '/devices/2/modes/0/reading/power/meterId',
      '/meters/0/id',
      '/supply/hertz',
      '/supply/volts',
      '/tariff/flat/currency',
      '/tariff/flat/pricePerKwh',
      '/weeksPerYear',
    ])
  })

  test('has the codes and sentences that REST gives', async () => {
    const faults = await faultsOf({ weeksPerYear: 60, devices: [{ category: 'toaster oven', quantity: 0 }] })
    const rest = await app.send
      .post('/v1/estimates')
      .send({ weeksPerYear: 60, devices: [{ category: 'toaster oven', quantity: 0 }] })
    expect(rest.status).toBe(422)
    expect(faults).toEqual(rest.body.errors)
    expect(faults.find(({ pointer }) => pointer === '/devices/0/category')?.message).toContain('nearest')
  })

  test('names an empty list of devices', async () => {
    expect(await faultsOf({ devices: [] })).toEqual([expect.objectContaining({ pointer: '/devices' })])
  })

  test.each([
    ['of the input', { devices: [{ category: 'television' }], surprise: 1 }],
    ['of a device', { devices: [{ category: 'television', surprise: 1 }] }],
    [
      'of a reading',
      {
        devices: [
          {
            category: 'television',
            modes: [{ mode: 'STANDBY', reading: { power: { watts: 1, surprise: 1 } } }],
          },
        ],
      },
    ],
  ])('an unknown field %s is refused, not dropped', async (_where, given) => {
    const { status, errors } = await refused(app, EVERYTHING, { input: given })
    expect(status).toBe(400)
    expect(errors[0].message).toContain('"surprise" is not defined')
    expect(errors[0].extensions.code).toBe('BAD_USER_INPUT')
  })

  test.each([
    ['two kinds', { power: { watts: 1 }, declared: { watts: 1 } }],
    ['no kind', {}],
  ])('a reading of %s is refused', async (_what, reading) => {
    const given = { devices: [{ category: 'television', modes: [{ mode: 'STANDBY', reading }] }] }
    const { status, errors } = await refused(app, EVERYTHING, { input: given })
    expect(status).toBe(400)
    expect(errors[0].message).toContain('Exactly one key must be specified for OneOf type "ReadingInput"')
  })

  test.each(['1e999', '-1e999', '"1"', 'true'])('the figure %s is no number of watts', async (figure) => {
    const body = JSON.stringify({
      query: EVERYTHING,
      variables: {
        input: {
          devices: [
            { category: 'tv', modes: [{ mode: 'STANDBY', reading: { power: { watts: 'FIGURE' } } }] },
          ],
        },
      },
    })
    const answer = await app.send
      .post('/graphql')
      .type('application/json')
      .send(body.replace('"FIGURE"', figure))
    expect(answer.status).toBe(400)
    expect(answer.body.errors[0].extensions.code).toBe('BAD_USER_INPUT')
  })

  test('an unknown catalogue revision is NOT_FOUND and names the newest', async () => {
    const { errors } = await refused(app, EVERYTHING, {
      input: { catalogueRevision: 99, devices: [{ category: 'tv' }] },
    })
    expect(errors[0].extensions).toEqual({ code: 'NOT_FOUND', reason: 'unknown-revision', newest: 1 })
  })
})

describe('the way from a GraphQL input to REST’s shape', () => {
  test('gives the household that REST takes', () => {
    const asCoerced = JSON.parse(
      // Enum values, which GraphQL hands over as the service's own; currency and category are no enums.
      JSON.stringify(input).replace(
        /(?<!"(?:currency|category)":)"([A-Z_]{3,})"/g,
        (_, value: string) => `"${value.toLowerCase().replaceAll('_', '-')}"`,
      ),
    )
    expect(householdOfInput(asCoerced)).toEqual(household)
  })

  test('leads every pointer into REST’s shape back to where the same value stands in the input', () => {
    const pointers = pointersOf(householdOfInput(input)).filter((pointer) => !pointer.endsWith('/kind'))
    expect(pointers.length).toBeGreaterThan(50)
    for (const pointer of pointers) {
      const there = at(householdOfInput(input), pointer)
      expect(at(input, pointerIntoInput(pointer, input)), pointer).toEqual(there)
    }
  })

  test('leaves a pointer to something that is missing as it is', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom('devices', '9', 'modes', 'reading', 'hoursPerWeek', '~1'), { maxLength: 6 }),
        (steps) => {
          const pointer = steps.map((step) => `/${step}`).join('')
          expect(pointerIntoInput(pointer, {})).toBe(pointer)
        },
      ),
    )
  })
})

/** Pointers to every leaf. */
function pointersOf(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null) return [path]
  return Object.entries(value).flatMap(([key, inner]) => pointersOf(inner, `${path}/${key}`))
}

const at = (value: unknown, pointer: string) =>
  pointer
    .split('/')
    .slice(1)
    .reduce((inner, key) => (inner as Record<string, unknown>)[key], value)

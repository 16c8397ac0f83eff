import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { testApp, type TestApp } from '../../helpers/testApp.ts'
import { ask, refused } from './ask.ts'
import { everyFieldOf } from './everyFieldOf.ts'

const EVERYTHING = `query ($input: BaseLoadInput!) { evaluateBaseLoad(input: $input)${everyFieldOf('BaseLoadEvaluation')} }`

let app: TestApp
beforeAll(async () => {
  app = await testApp()
})
afterAll(() => app.close())

const wattHours = Array.from({ length: 9 * 24 }, (_, i) => (i === 50 ? null : 90 + ((i * 7) % 31)))
const blocks = [{ start: '2025-02-03T00:00:00+01:00', intervalSeconds: 3600, wattHours }]
const input = {
  blocks,
  timeZone: 'Europe/Berlin',
  daysAway: [{ from: '2025-02-04', to: '2025-02-04' }],
  inventory: { devices: [{ category: 'television' }] },
}
/** As GraphQL spells the values of its enums, and without the names of types. */
const inRestWords = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (key, inner: unknown) => {
      if (key === '__typename') return undefined
      if ((key === 'estimator' || key === 'form') && typeof inner === 'string')
        return inner.toLowerCase().replaceAll('_', '-')
      return inner
    }),
  )

describe('evaluateBaseLoad', () => {
  test('gives every field that REST gives, with the same figures', async () => {
    const { evaluateBaseLoad } = await ask(app, EVERYTHING, { input })
    const { body } = await app.send.post('/v1/base-load/evaluate').send(input).expect(200)
    expect(inRestWords(evaluateBaseLoad)).toEqual(body)
    expect(body.data).toMatchObject({ days: 9, gaps: 1 })
    expect(body.chosen.days).toBe(8)
  })

  test('takes its estimator by the enum, and a null for what is left out', async () => {
    const given = { blocks, estimator: 'PERCENTILE_10', daysAway: null, inventory: null, timeZone: null }
    const { evaluateBaseLoad } = await ask(app, EVERYTHING, { input: given })
    expect(evaluateBaseLoad.chosen.estimator).toBe('PERCENTILE_10')
    expect(evaluateBaseLoad.inventory).toBeNull()
  })

  test('names every fault by a pointer into the input, through the one member of a reading', async () => {
    const reading = { power: { watts: -1 } }
    const devices = [{ category: 'television', modes: [{ mode: 'STANDBY', reading }] }]
    const bad = {
      blocks: [{ start: 'soon', intervalSeconds: 3600, watts: [1] }],
      estimator: 'MINIMUM_HOUR',
      inventory: { devices },
    }
    const { errors, data } = await refused(app, EVERYTHING, { input: bad })
    expect(data).toEqual({ evaluateBaseLoad: null })
    expect(errors[0].extensions.code).toBe('BAD_USER_INPUT')
    const pointers = errors[0].extensions.errors.map(({ pointer }: { pointer: string }) => pointer).sort()
    expect(pointers).toEqual([
      '/blocks/0/start',
      '/estimator',
      '/inventory/devices/0/modes/0/reading/power/watts',
    ])
  })

  test('costs what reading its values costs, so that too many are refused before they are read', async () => {
    const values = Array.from({ length: 100_000 }, () => 1)
    const many = Array.from({ length: 12 }, () => ({ ...blocks[0], wattHours: values }))
    const large = await testApp({ bodyLimitBytes: 4_000_000 })
    const { errors } = await refused(large, EVERYTHING, { input: { ...input, blocks: many } })
    await large.close()
    expect(errors[0].extensions.reason).toBe('too-costly')
  })
})

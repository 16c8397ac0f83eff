import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import { SAVINGS_REQUESTS } from '../../../src/edges/rest/savings/examples.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { listMeasures } from '../../../src/useCases/listMeasures.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'
import { answerOf } from './answerOf.ts'
import { ask, refused } from './ask.ts'
import { everyFieldOf } from './everyFieldOf.ts'

const PLAN = `query ($input: SavingsPlanInput!) { savingsPlan(input: $input)${everyFieldOf('SavingsPlan')} }`

let app: TestApp
beforeAll(async () => {
  const seed = await readSeed()
  app = await testApp({ categories: seed.categories, settings: settingsOf(readConfig({}), seed) })
})
afterAll(() => app.close())

test('every field of every measure is that of the use case, all or of one kind', async () => {
  const { savingsMeasures } = await ask(app, `{ savingsMeasures${everyFieldOf('SavingsMeasure')} }`)
  expect(savingsMeasures).toEqual(listMeasures(app.deps).map((one) => answerOf(one, 'SavingsMeasure')))
  const some = await ask(app, '{ savingsMeasures(kind: TIMER) { code } }')
  expect(some.savingsMeasures).toEqual([{ code: 'plug-in-timer' }])
})

describe('savingsPlan', () => {
  test('has the figures of REST, every field', async () => {
    const { tariff, devices, ...rest } = SAVINGS_REQUESTS.strip.value
    const { currency, pricePerKwh } = tariff
    const inputDevices = devices.map((device) => {
      if (!('modes' in device) || !device.modes) return device
      const modes = device.modes.map(({ hoursPerWeek, reading }) => ({
        mode: 'STANDBY',
        hoursPerWeek: { exact: hoursPerWeek },
        reading: { power: { watts: reading.watts } },
      }))
      return { ...device, modes }
    })
    const { savingsPlan } = await ask(app, PLAN, {
      input: { ...rest, tariff: { flat: { currency, pricePerKwh } }, devices: inputDevices },
    })
    const { body } = await app.send.post('/v1/savings-plans').send(SAVINGS_REQUESTS.strip.value)
    expect(savingsPlan).toEqual(answerOf(body, 'SavingsPlan'))
  })

  test('reads figures and ranges of measures as REST does', async () => {
    const measures = { code: 'plug-in-timer', price: 5, hoursOffPerWeek: 20 }
    const range = { low: 0.1, typical: 0.2, high: 0.3 }
    const household = { devices: [{ category: 'television', year: 2008 }] }
    const { savingsPlan } = await ask(app, PLAN, {
      input: {
        ...household,
        plan: {
          goal: 'MOST_ENERGY',
          measures: [{ ...measures, persistence: { exact: 0.8 }, ownDrawW: { range } }],
        },
      },
    })
    const { body } = await app.send.post('/v1/savings-plans').send({
      ...household,
      plan: { goal: 'most-energy', measures: [{ ...measures, persistence: 0.8, ownDrawW: range }] },
    })
    expect(savingsPlan).toEqual(answerOf(body, 'SavingsPlan'))
  })

  test('names every fault at once, at the paths of its input', async () => {
    const { errors } = await refused(app, PLAN, {
      input: {
        devices: [{ category: 'television' }],
        plan: { budget: -1, measures: [{ code: 'plug-in-timer', persistence: { exact: 3 }, outlets: 2 }] },
      },
    })
    expect(
      errors[0].extensions.errors
        .map(({ pointer, code }: { pointer: string; code: string }) => `${pointer} ${code}`)
        .sort(),
    ).toEqual([
      '/plan/budget too-small',
      '/plan/measures/0/outlets not-of-this-kind',
      '/plan/measures/0/persistence/exact too-big',
    ])
  })
})

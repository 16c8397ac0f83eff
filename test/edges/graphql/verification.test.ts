import { afterAll, beforeAll, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import { VERIFICATION_REQUESTS } from '../../../src/edges/rest/verification/examples.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'
import { answerOf } from './answerOf.ts'
import { ask, refused } from './ask.ts'
import { everyFieldOf } from './everyFieldOf.ts'

const VERIFY = `query ($input: VerificationInput!) { verifySavings(input: $input)${everyFieldOf('Verification')} }`

let app: TestApp
beforeAll(async () => {
  const seed = await readSeed()
  app = await testApp({ categories: seed.categories, settings: settingsOf(readConfig({}), seed) })
})
afterAll(() => app.close())

const { value } = VERIFICATION_REQUESTS.visits
type Visit = (typeof value)['before' | 'after']

/** The same visit as GraphQL spells it. */
const inputOf = ({ meters, devices }: Visit) => ({
  meters,
  devices: devices.map((device) => ({
    ...device,
    modes: device.modes.map((mode) => {
      const reading = 'reading' in mode ? mode.reading : null
      return {
        mode: mode.mode.toUpperCase().replace('-', '_'),
        hoursPerWeek: { exact: mode.hoursPerWeek },
        reading: reading && { power: { watts: reading.watts, meterId: reading.meterId } },
      }
    }),
  })),
})

test('a verification has the figures of REST, every field of them', async () => {
  const { tariff, before, after, ...same } = value
  const { currency, pricePerKwh } = tariff
  const input = {
    ...same,
    tariff: { flat: { currency, pricePerKwh } },
    before: inputOf(before),
    after: inputOf(after),
  }
  const { verifySavings } = await ask(app, VERIFY, { input })
  const { body } = await app.send.post('/v1/verifications').send(value)
  expect(verifySavings).toEqual(answerOf(body, 'Verification'))
})

test('faults are named at once, at the paths of the input', async () => {
  const { errors } = await refused(app, VERIFY, {
    input: {
      before: {
        devices: [
          { category: 'television', modes: [{ mode: 'STANDBY', reading: { power: { watts: -1 } } }] },
        ],
      },
      after: {
        devices: [
          { id: 'a', category: 'television', modes: [{ mode: 'STANDBY', hoursPerWeek: { exact: 169 } }] },
        ],
      },
      plan: [{ name: 'x', deviceIds: ['b'], expectedKwhPerYear: 1 }],
    },
  })
  expect(
    errors[0].extensions.errors
      .map(({ pointer, code }: { pointer: string; code: string }) => `${pointer} ${code}`)
      .sort(),
  ).toEqual([
    '/after/devices/0/modes hours-exceed-week',
    '/after/devices/0/modes/0/hoursPerWeek/exact too-big',
    '/before/devices/0/id required',
    '/before/devices/0/modes/0/reading/power/watts too-small',
    '/plan/0/deviceIds/0 unknown-device',
  ])
})

test('two long visits cost more than one query may', async () => {
  const devices = Array.from({ length: 200 }, (_, i) => ({ id: `d${i}`, category: 'television' }))
  const { errors } = await refused(app, VERIFY, { input: { before: { devices }, after: { devices } } })
  expect(errors[0].message).toMatch(/cost/)
})

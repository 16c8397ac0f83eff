import { afterAll, beforeAll, expect, test } from 'vitest'
import { estimateSchema } from '../../../src/schemas/estimate.ts'
import { expectProblem, faultsOf } from '../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'
import { answerOf } from '../graphql/answerOf.ts'
import { ask } from '../graphql/ask.ts'
import { everyFieldOf } from '../graphql/everyFieldOf.ts'

let service: TestApp
beforeAll(async () => (service = await testApp()))
afterAll(() => service.close())

const estimate = (body: object) => service.send.post('/v1/estimates').send(body)
const QUERY = `query ($input: EstimateInput!) { estimate(input: $input)${everyFieldOf('Estimate')} }`
const devices = ['television', 'set-top-box', 'router', 'amplifier', 'television', 'router'].map(
  (category, i) => ({
    id: `d${i}`,
    category,
  }),
)
const asked = { devices, expectedWidths: true }

test('expected widths come with an estimate that asks for them, over REST, narrower with every reading', async () => {
  const { body } = await estimate(asked).expect(200)
  const { expectedWidths, total, nextReadings } = estimateSchema.parse(body)
  expect(expectedWidths!.map(({ readings }) => readings)).toEqual([1, 2, 5])
  const [one, two, five] = expectedWidths!.map(({ widthKwhPerYear }) => widthKwhPerYear)
  const present = total.energyKwhPerYear.high - total.energyKwhPerYear.low
  expect(present).toBeGreaterThan(one!)
  expect(one).toBeGreaterThan(two!)
  expect(two).toBeGreaterThan(five!)
  expect(expectedWidths![0]!.at).toEqual([
    { deviceId: nextReadings[0]!.deviceId, mode: nextReadings[0]!.mode },
  ])
})

test('expected widths are the same over GraphQL, and null where they are not asked for', async () => {
  const { body } = await estimate(asked).expect(200)
  const answer = await ask(service, QUERY, { input: asked })
  expect(answer.estimate).toEqual(answerOf(estimateSchema.parse(body), 'Estimate'))
  const plain = await ask(service, QUERY, { input: { devices } })
  expect(plain.estimate.expectedWidths).toBeNull()
  expect((await estimate({ devices })).body).not.toHaveProperty('expectedWidths')
})

test('expected widths are asked for with true or false and nothing else', async () => {
  const answer = await estimate({ devices, expectedWidths: 'yes' })
  expect(faultsOf(expectProblem(answer, 422, 'faulty-input'))).toEqual(['/expectedWidths invalid-type'])
})

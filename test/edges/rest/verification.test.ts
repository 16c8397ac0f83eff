import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import { exampleVerification } from '../../../src/edges/rest/verification/exampleVerification.ts'
import { VERIFICATION_REQUESTS } from '../../../src/edges/rest/verification/examples.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { verificationSchema } from '../../../src/schemas/verificationAnswer.ts'
import { expectProblem, faultsOf } from '../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

let service: TestApp
beforeAll(async () => {
  const seed = await readSeed()
  service = await testApp({ categories: seed.categories, settings: settingsOf(readConfig({}), seed) })
})
afterAll(() => service.close())

const verify = (body: object) => service.send.post('/v1/verifications').send(body)
const { visits } = VERIFICATION_REQUESTS

describe('POST /v1/verifications', () => {
  test.each(Object.entries(VERIFICATION_REQUESTS))('answers the example %s', async (_, { value }) => {
    const answer = await verify(value).expect(200)
    expect(answer.headers['cache-control']).toBe('no-store')
    expect(verificationSchema.parse(answer.body).total.all.largerThanNoise).toBe(true)
  })

  test('has the answer to the two visits as its example, and the same bytes each time', async () => {
    const [one, other] = [await verify(visits.value), await verify(visits.value)]
    expect(one.body).toEqual(exampleVerification)
    expect(other.text).toBe(one.text)
  })

  test('asks each device for an id, and names every fault of both visits at once', async () => {
    const answer = await verify({
      weeksPerYear: 60,
      before: { devices: [{ category: 'television' }], tariffCode: 'sample-flat-eur' },
      after: { devices: [{ id: 'a', category: 'nothing', quantity: 0 }] },
      plan: [{ name: 'x', deviceIds: ['b'], expectedKwhPerYear: 0 }],
      devices: [],
    })
    expect(faultsOf(expectProblem(answer, 422, 'faulty-input'))).toEqual([
      '/after/devices/0/category unknown-category',
      '/after/devices/0/quantity too-small',
      '/before/devices/0/id required',
      '/before/tariffCode unknown-field',
      '/devices unknown-field',
      '/plan/0/deviceIds/0 unknown-device',
      '/plan/0/expectedKwhPerYear too-small',
      '/weeksPerYear too-big',
    ])
  })

  test('refuses a revision that there is not, a body that is none, and a query', async () => {
    expectProblem(await verify({ ...visits.value, catalogueRevision: 99 }), 404, 'unknown-revision')
    expectProblem(await service.send.post('/v1/verifications'), 400, 'malformed-body')
    const answer = await service.send.post('/v1/verifications?x=1').send(visits.value)
    expect(faultsOf(expectProblem(answer, 400, 'faulty-query'))).toEqual(['query /x unknown-field'])
  })

  test('asks for a key where the operator does', async () => {
    const closed = await testApp({ anonymousEstimates: false })
    const answer = await closed.send.post('/v1/verifications').send(visits.value)
    expectProblem(answer, 401, 'key-required')
    await closed.close()
  })
})

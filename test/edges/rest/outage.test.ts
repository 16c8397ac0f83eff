import { afterAll, beforeAll, expect, test } from 'vitest'
import { DomainError } from '../../../src/core/fault.ts'
import { tellOutages } from '../../../src/persistence/tellOutages.ts'
import { expectProblem } from '../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'
import { memoryCatalogueStore } from '../../stores/memoryCatalogueStore.ts'

const MARKER = 'db.internal.example'
let app: TestApp
let failure: Error | null = null
beforeAll(async () => {
  const store = memoryCatalogueStore()
  app = await testApp({
    catalogueStore: tellOutages({
      ...store,
      catalogueAt: async (revision: number) => {
        if (failure) throw failure
        return store.catalogueAt(revision)
      },
    }),
  })
  failure = Object.assign(new Error(`connect ECONNREFUSED ${MARKER}`), { code: 'ECONNREFUSED' })
})
afterAll(() => app.close())

const past = { devices: [{ category: 'television' }], catalogueRevision: 99 }

test('a past revision that the database cannot give now is 503, with a time to come back, and nothing of the inside', async () => {
  const answer = await app.send.post('/v1/estimates').send(past)
  expectProblem(answer, 503, 'database-unavailable')
  expect(answer.headers['retry-after']).toBe('5')
  expect(answer.text).not.toContain(MARKER)
})

test('GraphQL says the same', async () => {
  const query =
    'query { estimate(input: { devices: [{ category: "television" }], catalogueRevision: 98 }) { catalogueRevision } }'
  const { body } = await app.send.post('/graphql').send({ query })
  expect(body.errors[0].extensions).toMatchObject({ code: 'UNAVAILABLE', reason: 'database-unavailable' })
  expect(JSON.stringify(body)).not.toContain(MARKER)
})

test('the log has the cause, of both, as something to act on', async () => {
  const causes = app
    .log()
    .split('\n')
    .filter((line) => line.includes(MARKER))
    .map((line) => JSON.parse(line) as { level: string })
  expect(causes.map(({ level }) => level)).toEqual(['error', 'error'])
})

test('what is held in memory is answered all the same', async () => {
  await app.send.post('/v1/estimates').send({ devices: past.devices }).expect(200)
})

test('another failure of the store is 500', async () => {
  failure = new DomainError('some-bug', 'No.')
  expectProblem(
    await app.send.post('/v1/estimates').send({ ...past, catalogueRevision: 97 }),
    500,
    'internal',
  )
})

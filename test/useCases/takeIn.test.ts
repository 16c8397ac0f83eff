import { afterAll, beforeAll, expect, test } from 'vitest'
import { intakeHouseholdSchema } from '../../src/schemas/intake.ts'
import { readShape } from '../../src/schemas/readShape.ts'
import { type IntakeLine, takeIn } from '../../src/useCases/takeIn.ts'
import { type TestApp, testApp } from '../helpers/testApp.ts'

let app: TestApp
beforeAll(async () => {
  app = await testApp()
})
afterAll(() => app.close())

const sender = {
  caller: { organisation: 'operator', keyId: 'key', scopes: ['intake'] as const },
  requestId: 'request',
}

/** Lines without end, and how many of them were taken. */
function lines() {
  let taken = 0
  async function* endless(): AsyncGenerator<IntakeLine> {
    for (;;) {
      taken++
      const household = { reference: `H-${taken}`, devices: [{ category: 'television' }] }
      yield { number: taken, submitted: readShape(intakeHouseholdSchema, household) }
    }
  }
  return { source: endless(), taken: () => taken }
}

test.each([null, 'a-batch'])(
  'takes no more lines than two parts ahead of the answers that are taken (batch %j)',
  async (batch) => {
    const { source, taken } = lines()
    const answers = takeIn(app.deps, sender, source, { batch })
    await answers.next()
    expect(taken()).toBe(200)
    for (let i = 2; i <= 100; i++) await answers.next()
    expect(taken()).toBe(200)
    await answers.next()
    expect(taken()).toBe(300)
    // Whoever gives up ends the reading, too.
    await answers.return(undefined)
    expect(taken()).toBe(300)
    expect((await source.next()).done).toBe(true)
  },
)

test('estimates a whole batch against one revision of the catalogue', async () => {
  const { source } = lines()
  const answers = takeIn(app.deps, sender, source, { batch: null })
  const revisions = new Set<number>()
  for (let i = 0; i < 250; i++) {
    const { value } = await answers.next()
    if (value?.kind === 'estimated') revisions.add(value.estimate.catalogueRevision)
  }
  expect(revisions.size).toBe(1)
})

test('lets nothing fail unheard when a part cannot be stored while the next is under way', async () => {
  const failure = new Error('no store')
  const deps = {
    ...app.deps,
    inventoryStore: { ...app.deps.inventoryStore, addBatch: () => Promise.reject(failure) },
  }
  const { source } = lines()
  await expect(takeIn(deps, sender, source, { batch: 'failing' }).next()).rejects.toBe(failure)
})

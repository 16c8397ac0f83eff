import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import { LIMIT_REQUESTS } from '../../../src/edges/rest/limits/examples.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { listCautions } from '../../../src/useCases/listCautions.ts'
import { listLimits } from '../../../src/useCases/listLimits.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'
import { answerOf } from './answerOf.ts'
import { ask, refused } from './ask.ts'
import { everyFieldOf } from './everyFieldOf.ts'

const CHECK = `query ($input: LimitCheckInput!) { checkAgainstLimit(input: $input)${everyFieldOf('LimitCheck')} }`

let app: TestApp
beforeAll(async () => {
  const seed = await readSeed()
  app = await testApp({ categories: seed.categories, settings: settingsOf(readConfig({}), seed) })
})
afterAll(() => app.close())

test('every field of every limit is that of the use case', async () => {
  const { limits } = await ask(app, `{ limits${everyFieldOf('PublishedLimit')} }`)
  const { items } = listLimits(app.deps, {}, { limit: Infinity })
  expect(limits).toEqual(items.map((item) => answerOf(item, 'PublishedLimit')))
})

test('limits are filtered, and a day that is none is refused', async () => {
  const { limits } = await ask(
    app,
    '{ limits(jurisdiction: EU, purpose: PLACING_ON_THE_MARKET, mode: OFF, placedOnMarket: "2028-01-01") { code } }',
  )
  expect(limits).toEqual([{ code: 'eu-2027-off' }])
  const { errors } = await refused(app, '{ limits(placedOnMarket: "2028") { code } }')
  expect(errors[0].extensions.code).toBe('BAD_USER_INPUT')
})

test('cautions are those of the use case, all or of one kind of answer', async () => {
  const all = await ask(app, `{ cautions${everyFieldOf('KeptCaution')} }`)
  expect(all.cautions).toEqual(listCautions(app.deps).map((one) => answerOf(one, 'KeptCaution')))
  const some = await ask(app, '{ cautions(appliesTo: READING_DECLARED) { code } }')
  expect(some.cautions).toEqual([{ code: 'defer-to-manufacturer' }])
})

describe('checkAgainstLimit', () => {
  test('has the figures of REST for a reading, every field', async () => {
    const { value } = LIMIT_REQUESTS.television
    const { watts, accuracy } = value.reading
    const { checkAgainstLimit } = await ask(app, CHECK, {
      input: { ...value, mode: 'STANDBY', reading: { power: { watts, accuracy } } },
    })
    const body = (await app.send.post('/v1/limits/check').send(value)).body
    expect(checkAgainstLimit).toEqual(answerOf(body, 'LimitCheck'))
  })

  test('has the figures of REST for a power, every field', async () => {
    const { value } = LIMIT_REQUESTS.charger
    const { checkAgainstLimit } = await ask(app, CHECK, {
      input: { ...value, mode: 'NO_LOAD', supplyType: 'AC_DC' },
    })
    const body = (await app.send.post('/v1/limits/check').send(value)).body
    expect(checkAgainstLimit).toEqual(answerOf(body, 'LimitCheck'))
  })

  test('names every fault at once, at the paths of its input', async () => {
    const { errors } = await refused(app, CHECK, {
      input: { mode: 'OFF', showsStatus: true, reading: { power: { watts: -1 } } },
    })
    expect(
      errors[0].extensions.errors
        .map(({ pointer, code }: { pointer: string; code: string }) => `${pointer} ${code}`)
        .sort(),
    ).toEqual([
      '/jurisdiction required',
      '/placedOnMarket required',
      '/reading/power/watts too-small',
      '/showsStatus not-of-this-mode',
    ])
  })
})

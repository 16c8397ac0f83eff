import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import { exampleReadingEvaluation, READING_REQUESTS } from '../../../src/edges/rest/readingExamples.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { readingEvaluationSchema } from '../../../src/schemas/readingEvaluation.ts'
import { MOST_SAMPLES } from '../../../src/schemas/reading.ts'
import { expectProblem, faultsOf } from '../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'
import { SAMPLE_READINGS } from '../sampleReadings.ts'

let service: TestApp
beforeAll(async () => (service = await testApp()))
afterAll(() => service.close())

const evaluate = (body: object | string) =>
  service.send.post('/v1/readings/evaluate').set('content-type', 'application/json').send(body)
const evaluated = async (body: object) => {
  const answer = await evaluate(body).expect(200)
  return readingEvaluationSchema.parse(answer.body)
}
const refused = async (body: object) => faultsOf(expectProblem(await evaluate(body), 422, 'faulty-input'))
const ofReading = (reading: object) => refused({ reading })

describe('POST /v1/readings/evaluate', () => {
  test.each(SAMPLE_READINGS)(
    'evaluates a reading of $kind, and keeps it from caches',
    async ({ kind, body }) => {
      const answer = await evaluate(body)
      expect(answer.status).toBe(200)
      expect(answer.headers['cache-control']).toBe('no-store')
      const { kind: said, steps, powerW } = readingEvaluationSchema.parse(answer.body)
      expect(said).toBe(kind)
      expect(steps.length).toBeGreaterThan(1)
      expect(powerW.expected).toBeGreaterThan(0)
    },
  )

  test('teaches that 230 V x 0.1 A is not 23 W', async () => {
    const { apparentPowerVa, powerW, confidence, steps } = await evaluated({
      reading: { kind: 'current', amperes: 0.1, accuracy: { percentOfReading: 0, counts: 0, resolution: 0 } },
    })
    expect(apparentPowerVa?.expected).toBe(23)
    expect(powerW.high - powerW.low).toBeGreaterThan(10)
    expect(confidence).toBe('partly-measured')
    expect(steps.map(({ what }) => what).join(' ')).toContain('230 V x 0.1 A is not 23 W')
  })

  test('tells stable, unstable, too short and cyclic series apart', async () => {
    const judged = async (watts: number[]) => {
      const { series, confidence } = await evaluated({
        reading: { kind: 'samples', watts, intervalSeconds: 1 },
      })
      return [series!.verdict, series!.cycle?.periodSeconds ?? null, confidence]
    }
    const of = (count: number, at: (i: number) => number) => Array.from({ length: count }, (_, i) => at(i))
    expect(await judged(of(900, () => 2))).toEqual(['stable', null, 'measured'])
    expect(await judged(of(900, (i) => 2 + i / 1000))).toEqual(['unstable', null, 'partly-measured'])
    expect(await judged(of(600, () => 2))).toEqual(['too-short', null, 'partly-measured'])
    expect(await judged(of(1200, (i) => (i % 40 < 9 ? 5 : 1)))).toEqual(['stable', 40, 'measured'])
  })

  test('gives the same bytes for the same request', async () => {
    const [first, second] = [
      await evaluate(SAMPLE_READINGS[2]!.body),
      await evaluate(SAMPLE_READINGS[2]!.body),
    ]
    expect(second.text).toBe(first.text)
  })

  test('reads a day of samples, one a second', async () => {
    const watts = Array.from({ length: MOST_SAMPLES }, (_, i) => 2 + (i % 7) / 10)
    const { series } = await evaluated({ reading: { kind: 'samples', watts, intervalSeconds: 1 } })
    expect(series).toMatchObject({ samples: MOST_SAMPLES, verdict: 'stable' })
  })
})

describe('bad readings', () => {
  test('are refused with faults of shape, of the trade, unknown fields and parameters all at once', async () => {
    const answer = await service.send.post('/v1/readings/evaluate?verbose=1').send({
      category: 'televisoin',
      mode: 'asleep',
      quantity: 0,
      coverageProbability: 2,
      maximumCurrentRatio: 0,
      colour: 'black',
      meters: [
        { id: 'm', preset: 'ruler' },
        { id: 'm', percentOfReading: 1, counts: 1 },
      ],
      reading: {
        kind: 'current',
        amperes: -1,
        loops: 0,
        meterId: 'n',
        accuracy: { preset: 'smart-plug' },
        phase: 1,
      },
    })
    expect(faultsOf(expectProblem(answer, 422, 'faulty-input'))).toEqual(
      [
        '/category unknown-category',
        '/colour unknown-field',
        '/coverageProbability too-big',
        '/maximumCurrentRatio too-small',
        '/meters/0/preset invalid-value',
        '/meters/1/id duplicate-id',
        '/meters/1/resolution required',
        '/mode invalid-value',
        '/quantity too-small',
        '/reading/amperes too-small',
        '/reading/loops too-small',
        '/reading/meterId given-twice',
        '/reading/meterId unknown-meter',
        '/reading/phase unknown-field',
        'query /verbose unknown-field',
      ].sort(),
    )
  })

  test.each([
    ['no reading', {}, ['/reading required']],
    ['an unknown kind', { reading: { kind: 'guess' } }, ['/reading/kind invalid-union']],
  ])('%s is refused', async (_, body, faults) => {
    expect(await refused(body)).toEqual(faults)
  })

  const samples = { kind: 'samples', watts: [1, 2], intervalSeconds: 1 }
  test.each([
    ['a negative sample', { ...samples, watts: [1, -0.1, 2] }, '/reading/watts/1 too-small'],
    ['a single sample', { ...samples, watts: [1] }, '/reading/watts too-small'],
    ['a sample that is no number', { ...samples, watts: [1, null] }, '/reading/watts/1 invalid-type'],
    ['too many samples', { ...samples, watts: Array(MOST_SAMPLES + 1).fill(1) }, '/reading/watts too-big'],
    ['samples no time apart', { ...samples, intervalSeconds: 0 }, '/reading/intervalSeconds too-small'],
    ['an undocumented field', { ...samples, startedAt: 1 }, '/reading/startedAt unknown-field'],
  ])('%s is refused', async (_, reading, fault) => {
    expect(await ofReading(reading)).toEqual([fault])
  })

  const surface = {
    kind: 'thermal',
    surfaceTemperatureC: 30,
    ambientTemperatureC: 20,
    areaM2: 0.01,
    orientation: 'vertical',
  }
  test.each([
    [
      'no warmer than the room',
      { surfaceTemperatureC: 20 },
      ['/reading/surfaceTemperatureC surface-not-warmer'],
    ],
    [
      'colder than the room',
      { surfaceTemperatureC: 10 },
      ['/reading/surfaceTemperatureC surface-not-warmer'],
    ],
    ['without an area', { areaM2: 0 }, ['/reading/areaM2 too-small']],
    ['of no height', { heightM: 0 }, ['/reading/heightM too-small']],
    ['that faces sideways', { orientation: 'sideways' }, ['/reading/orientation invalid-value']],
    ['of an emissivity above 1', { emissivity: 1.1 }, ['/reading/emissivity too-big']],
    ['with a colour', { colour: 'black' }, ['/reading/colour unknown-field']],
  ])('a surface %s is refused', async (_, changes, faults) => {
    expect(await ofReading({ ...surface, ...changes })).toEqual(faults)
  })

  test('a surface that is no warmer says what to do', async () => {
    const answer = await evaluate({ reading: { ...surface, surfaceTemperatureC: 20 } })
    expect(expectProblem(answer, 422, 'faulty-input')['detail']).toMatch(/20 °C.*plug-in wattmeter/)
  })

  test.each([
    ['a class and figures together', { preset: 'smart-plug', percentOfReading: 1, counts: 1, resolution: 1 }],
    ['neither', {}],
    ['an unknown class', { preset: 'ruler' }],
    ['figures of which one is missing', { percentOfReading: 1, counts: 1 }],
  ])('an accuracy of %s is refused', async (_, accuracy) => {
    const faults = await ofReading({ kind: 'power', watts: 1, accuracy })
    expect(faults.length).toBeGreaterThan(0)
    for (const fault of faults) expect(fault).toMatch(/^\/reading\/accuracy/)
  })

  test('JSON that breaks off is 400, as is no body at all', async () => {
    expectProblem(await evaluate('{"reading":'), 400, 'malformed-body')
    expectProblem(await service.send.post('/v1/readings/evaluate'), 400, 'malformed-body')
  })

  test('an unknown catalogue revision is 404 and names the newest', async () => {
    const answer = await evaluate({ reading: { kind: 'declared', watts: 1 }, catalogueRevision: 9 })
    expect(expectProblem(answer, 404, 'unknown-revision')['newest']).toBe(1)
  })
})

describe('readings in an estimate', () => {
  const estimate = (body: object) => service.send.post('/v1/estimates').send(body)
  const withSamples = (count: number, readings: number) => ({
    devices: Array.from({ length: readings }, () => ({
      category: 'router',
      modes: [
        {
          mode: 'networked-standby',
          reading: { kind: 'samples', watts: Array(count).fill(7), intervalSeconds: 1 },
        },
      ],
    })),
  })

  test('of the new kinds are taken, and doubted where they are hard to believe', async () => {
    const { body } = await estimate({
      meters: [{ id: 'plug', preset: 'smart-plug' }],
      devices: [
        { ...withSamples(900, 1).devices[0] },
        {
          category: 'router',
          modes: [
            {
              mode: 'networked-standby',
              reading: {
                kind: 'thermal',
                surfaceTemperatureC: 40,
                ambientTemperatureC: 20,
                areaM2: 0.02,
                orientation: 'facing-up',
              },
            },
          ],
        },
        {
          category: 'router',
          modes: [{ mode: 'networked-standby', reading: { kind: 'power', watts: 7000, meterId: 'plug' } }],
        },
      ],
    }).expect(200)
    const [sampled, warm, doubted] = body.devices
    expect([sampled.confidence, warm.confidence]).toEqual(['measured', 'partly-measured'])
    expect(sampled.modes[0].origin).toMatchObject({ kind: 'reading', detail: 'samples' })
    expect(warm.powerW.expected).toBeGreaterThan(3)
    expect(doubted.warnings.map(({ code }: { code: string }) => code)).toEqual([
      'meter-class-assumed',
      'milliwatts-as-watts',
    ])
  })

  test('hold at most 100,000 samples together', async () => {
    await estimate(withSamples(50_000, 2)).expect(200)
    const answer = await estimate(withSamples(50_001, 2))
    expect(faultsOf(expectProblem(answer, 422, 'faulty-input'))).toEqual(['/devices too-many-samples'])
  })
})

describe('where the operator gives no estimates without a key', () => {
  test('no reading is evaluated, either', async () => {
    const closed = await testApp({ anonymousEstimates: false })
    expectProblem(await closed.send.post('/v1/readings/evaluate').send({}), 401, 'key-required')
    await closed.close()
  })
})

describe('the examples', () => {
  let sample: TestApp
  beforeAll(async () => {
    const seed = await readSeed()
    sample = await testApp({ categories: seed.categories, settings: settingsOf(readConfig({}), seed) })
  })
  afterAll(() => sample.close())

  test.each(Object.entries(READING_REQUESTS))('%s is evaluated', async (_, { value }) => {
    await sample.send.post('/v1/readings/evaluate').send(value).expect(200)
  })

  test('the evaluation is the answer to the reading with a clamp meter', async () => {
    const { body } = await sample.send.post('/v1/readings/evaluate').send(READING_REQUESTS.clamp.value)
    expect(body).toEqual(exampleReadingEvaluation)
  })

  test('are in the document, beside every status that the route answers', async () => {
    const { body } = await sample.send.get('/openapi.json').expect(200)
    const { post } = body.paths['/v1/readings/evaluate']
    expect(Object.keys(post.requestBody.content['application/json'].examples)).toEqual(
      Object.keys(READING_REQUESTS),
    )
    expect(Object.keys(post.responses).map(Number)).toEqual(
      expect.arrayContaining([200, 400, 401, 403, 404, 406, 413, 415, 422, 500, 503]),
    )
  })
})

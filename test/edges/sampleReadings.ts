import type { ReadingToEvaluate } from '../../src/core/readings/readingEvaluation.ts'

const limits = { percentOfReading: 1.5, counts: 3, resolution: 0.01 }
const watts = Array.from({ length: 960 }, (_, i) => (i % 60 < 20 ? 4 : 2))

/** One reading of each kind as GraphQL takes it, every field of every input among them, and the same as REST takes it. */
export const SAMPLE_READINGS: readonly {
  readonly kind: string
  readonly input: object
  readonly body: ReadingToEvaluate
}[] = [
  {
    kind: 'power',
    input: {
      reading: { power: { watts: 7, meterId: 'm1' } },
      meters: [
        { id: 'm1', preset: 'PLUG_IN_WATTMETER' },
        { id: 'm2', ...limits },
      ],
      category: 'router',
      mode: 'NETWORKED_STANDBY',
      year: 2020,
      quantity: 2,
      coverageProbability: 0.95,
      maximumCurrentRatio: 15,
      catalogueRevision: 1,
    },
    body: {
      reading: { kind: 'power', watts: 7, meterId: 'm1' },
      meters: [
        { id: 'm1', preset: 'plug-in-wattmeter' },
        { id: 'm2', ...limits },
      ],
      category: 'router',
      mode: 'networked-standby',
      year: 2020,
      quantity: 2,
      coverageProbability: 0.95,
      maximumCurrentRatio: 15,
      catalogueRevision: 1,
    },
  },
  {
    kind: 'energy',
    input: { reading: { energy: { wattHours: 24, durationHours: 48, accuracy: limits } } },
    body: { reading: { kind: 'energy', wattHours: 24, durationHours: 48, accuracy: limits } },
  },
  {
    kind: 'samples',
    input: { reading: { samples: { watts, intervalSeconds: 1, accuracy: { preset: 'SMART_PLUG' } } } },
    body: { reading: { kind: 'samples', watts, intervalSeconds: 1, accuracy: { preset: 'smart-plug' } } },
  },
  {
    kind: 'current',
    input: {
      supply: { volts: 240, tolerancePercent: 5, hertz: 50 },
      reading: {
        current: {
          amperes: 0.4,
          loops: 10,
          volts: 238,
          powerFactor: { range: { low: 0.3, typical: 0.4, high: 0.6 } },
          accuracy: { preset: 'CLAMP_TRUE_RMS' },
        },
      },
    },
    body: {
      supply: { volts: 240, tolerancePercent: 5, hertz: 50 },
      reading: {
        kind: 'current',
        amperes: 0.4,
        loops: 10,
        volts: 238,
        powerFactor: { low: 0.3, typical: 0.4, high: 0.6 },
        accuracy: { preset: 'clamp-true-rms' },
      },
    },
  },
  {
    kind: 'apparent-power',
    input: { category: 'TV', reading: { apparentPower: { voltAmperes: 12, powerFactor: { exact: 0.5 } } } },
    body: { category: 'TV', reading: { kind: 'apparent-power', voltAmperes: 12, powerFactor: 0.5 } },
  },
  {
    kind: 'declared',
    input: { reading: { declared: { watts: 4 } } },
    body: { reading: { kind: 'declared', watts: 4 } },
  },
  {
    kind: 'thermal',
    input: {
      reading: {
        thermal: {
          surfaceTemperatureC: 38,
          ambientTemperatureC: 21,
          areaM2: 0.006,
          heightM: 0.08,
          orientation: 'FACING_UP',
          emissivity: 0.95,
        },
      },
    },
    body: {
      reading: {
        kind: 'thermal',
        surfaceTemperatureC: 38,
        ambientTemperatureC: 21,
        areaM2: 0.006,
        heightM: 0.08,
        orientation: 'facing-up',
        emissivity: 0.95,
      },
    },
  },
]

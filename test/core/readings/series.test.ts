import { describe, expect, test } from 'vitest'
import { analyseSeries } from '../../../src/core/readings/series/analyseSeries.ts'
import { blockMeans, meanOf } from '../../../src/core/readings/series/blockMeans.ts'
import { findCycle } from '../../../src/core/readings/series/findCycle.ts'
import { slopeOf, withoutTrend } from '../../../src/core/readings/series/straightLine.ts'
import { uncertaintyOfMean } from '../../../src/core/readings/series/uncertaintyOfMean.ts'
import { noise, rememberingNoise, seriesOf } from './noise.ts'

/** Watts at second i that rise by a slope in W an hour. */
const rising = (from: number, slopePerHour: number) => (i: number) => from + (slopePerHour * i) / 3600

describe('the straight line', () => {
  test('has the slope of a line, whatever its height', () => {
    expect(slopeOf(seriesOf(101, (i) => 7 + 0.25 * i))).toBeCloseTo(0.25, 12)
    expect(slopeOf([3, 3, 3])).toBe(0)
  })

  test('has the slope of the textbook formula for points off the line', () => {
    // sum (x - 1.5)(y - 4.25) = -1.5(-3.25) - 0.5(-0.25) + 0.5(0.75) + 1.5(2.75) = 9.5; sum (x - 1.5)^2 = 5
    expect(slopeOf([1, 4, 5, 7])).toBeCloseTo(9.5 / 5, 12)
  })

  test('taken off, leaves nothing of a line', () => {
    for (const rest of withoutTrend(seriesOf(50, (i) => 2 - 0.1 * i))) expect(rest).toBeCloseTo(0, 12)
  })
})

describe('block means', () => {
  test('keep a series that is short enough as it is', () => {
    expect(blockMeans([1, 2, 3], 3)).toEqual({ means: [1, 2, 3], length: 1 })
  })

  test('gather neighbours and leave out what fills no block', () => {
    expect(blockMeans([1, 3, 5, 7, 9], 3)).toEqual({ means: [2, 6], length: 2 })
    expect(meanOf([1, 2, 9], 1, 3)).toBe(5.5)
  })
})

describe('the uncertainty of a mean', () => {
  test('is s/sqrt(n) for values that are independent of each other', () => {
    const next = noise(1)
    const values = seriesOf(2000, () => 5 + next())
    const mean = meanOf(values)
    const s = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 1999)
    const { standard, effective } = uncertaintyOfMean(values)
    expect(standard / (s / Math.sqrt(2000))).toBeGreaterThanOrEqual(1 - 1e-9)
    expect(standard / (s / Math.sqrt(2000))).toBeLessThan(1.15)
    expect(effective).toBeGreaterThan(1500)
  })

  test('is that of n (1 - a)/(1 + a) values where each keeps a of the one before, within what one series shows', () => {
    const memory = 0.9
    const ratios = seriesOf(40, (seed) => {
      const next = rememberingNoise(100 + seed, memory)
      return uncertaintyOfMean(seriesOf(2000, () => 10 + next())).standard
    })
    const truth = Math.sqrt((1 + memory) / (1 - memory) / 2000)
    expect(meanOf(ratios) / truth).toBeGreaterThan(0.9)
    expect(meanOf(ratios) / truth).toBeLessThan(1.1)
  })

  test('covers the true mean about as often as it claims, which s/sqrt(n) is far from doing', () => {
    let [covered, coveredByHalf] = [0, 0]
    for (let seed = 0; seed < 400; seed++) {
      const next = rememberingNoise(1000 + seed, 0.8)
      const values = seriesOf(600, () => 10 + next())
      const off = Math.abs(meanOf(values) - 10)
      if (off < 2 * uncertaintyOfMean(values).standard) covered++
      if (off < 2 / Math.sqrt(600)) coveredByHalf++
    }
    expect(covered / 400).toBeGreaterThan(0.9)
    expect(covered / 400).toBeLessThan(0.99)
    expect(coveredByHalf / 400).toBeLessThan(0.6)
  })

  test('never falls below that of independent values, even where neighbours differ on purpose', () => {
    const values = seriesOf(1000, (i) => (i % 2 === 0 ? 1 : 3))
    expect(uncertaintyOfMean(values).standard).toBeCloseTo(1 / Math.sqrt(999), 12)
    expect(uncertaintyOfMean(values).effective).toBeCloseTo(1000, 6)
  })

  test('is nothing where nothing scatters', () => {
    expect(uncertaintyOfMean(seriesOf(300, () => 1.1))).toEqual({
      standard: 0,
      effective: 300,
      degrees: 299,
    })
    expect(uncertaintyOfMean([0, 0])).toEqual({ standard: 0, effective: 2, degrees: 1 })
  })

  test('of two values has one degree of freedom', () => {
    expect(uncertaintyOfMean([1, 2])).toEqual({ standard: 0.5, effective: 2, degrees: 1 })
  })

  test('of a series that cancels out within each block is still that of independent values', () => {
    const { standard, effective, degrees } = uncertaintyOfMean(seriesOf(4096, (i) => (i % 2 === 0 ? 1 : 3)))
    expect(standard).toBeCloseTo(1 / Math.sqrt(4095), 12)
    expect([Math.round(effective), degrees]).toEqual([4096, 2047])
  })

  test('of a long series is about that of the same series uncut', () => {
    const next = rememberingNoise(5, 0.95)
    const values = seriesOf(20_000, () => 10 + next())
    const { standard, effective } = uncertaintyOfMean(values)
    const truth = Math.sqrt(1.95 / 0.05 / 20_000)
    expect(standard / truth).toBeGreaterThan(0.8)
    expect(standard / truth).toBeLessThan(1.2)
    expect(effective).toBeGreaterThan(300)
    expect(effective).toBeLessThan(900)
  })
})

describe('a cycle', () => {
  test('is found with its period, through noise and drift', () => {
    const next = noise(2)
    const values = seriesOf(1200, (i) => (i % 73 < 20 ? 5 : 1) + 0.2 * next() + i / 2000)
    expect(findCycle(values)).toBeCloseTo(73, 0)
  })

  test('of a period that is no whole number of steps is found sharply', () => {
    expect(findCycle(seriesOf(1500, (i) => Math.sin((2 * Math.PI * i) / 41.3)))).toBeCloseTo(41.3, 1)
  })

  test('is the whole one where its parts look alike', () => {
    const pulses = (i: number) => (i % 100 < 10 ? 5 : i % 100 >= 50 && i % 100 < 60 ? 2 : 1)
    expect(findCycle(seriesOf(1000, pulses))).toBeCloseTo(100, 1)
  })

  test('of which two fit in is found where it repeats itself nearly exactly', () => {
    expect(findCycle(seriesOf(1000, (i) => (i % 450 < 90 ? 3 : 1)))).toBeCloseTo(450, 0)
  })

  test('of a long series is found in its blocks', () => {
    expect(findCycle(seriesOf(50_000, (i) => (i % 500 < 100 ? 3 : 1)))).toBeCloseTo(500, 0)
  })

  test.each([
    ['noise', (seed: number) => noise(seed), 600],
    ['a few noisy values', (seed: number) => noise(seed), 40],
    ['a slow wander', (seed: number) => rememberingNoise(seed, 0.99), 800],
  ])('is not seen in %s', (_, make, count) => {
    const seen = seriesOf(60, (seed) => {
      const next = make(seed)
      return findCycle(seriesOf(count, () => 5 + next())) === null ? 0 : 1
    })
    expect(seen.reduce((sum, one) => sum + one, 0)).toBe(0)
  })

  test.each([
    ['nothing moves', seriesOf(500, () => 1.2)],
    ['only the trend does', seriesOf(500, (i) => i)],
    ['there are two values', [1, 2]],
  ])('is not seen where %s', (_, values) => {
    expect(findCycle(values)).toBeNull()
  })

  test('is not seen in a step, which looks like nothing else', () => {
    expect(findCycle(seriesOf(600, (i) => (i < 300 ? 1 : 2)))).toBeNull()
  })
})

describe('the stability rule of IEC 62301:2011 5.3.2', () => {
  test('leaves the first third out', () => {
    const { meanW, used, samples, verdict } = analyseSeries(
      seriesOf(900, (i) => (i < 300 ? 40 : 2)),
      1,
    )
    expect({ meanW, used, samples, verdict }).toEqual({
      meanW: 2,
      used: 600,
      samples: 900,
      verdict: 'stable',
    })
  })

  test.each([
    ['up to 1 W allows 10 mW an hour', 0.9, 0.0099, 'stable'],
    ['up to 1 W allows no more', 0.9, 0.0101, 'unstable'],
    ['up to 1 W allows a fall as it does a rise', 0.9, -0.0099, 'stable'],
    ['up to 1 W does not allow a steeper fall', 0.9, -0.0101, 'unstable'],
    ['above 1 W allows 1 % of the power an hour', 20, 0.199, 'stable'],
    ['above 1 W allows no more than that', 20, 0.203, 'unstable'],
  ])('%s', (_, from, slope, verdict) => {
    const analysis = analyseSeries(seriesOf(1800, rising(from, slope)), 1)
    expect(analysis.slopeWPerHour).toBeCloseTo(slope, 9)
    expect(analysis.verdict).toBe(verdict)
  })

  test('counts the slope by time and not by samples', () => {
    const analysis = analyseSeries(
      seriesOf(200, (i) => 2 + 0.05 * i),
      10,
    )
    expect(analysis.slopeWPerHour).toBeCloseTo((0.05 * 3600) / 10, 9)
    expect(analysis.durationSeconds).toBe(2000)
  })

  test('says nothing below 15 minutes, however steady the series is', () => {
    expect(
      analyseSeries(
        seriesOf(899, () => 2),
        1,
      ).verdict,
    ).toBe('too-short')
    expect(
      analyseSeries(
        seriesOf(900, () => 2),
        1,
      ).verdict,
    ).toBe('stable')
    expect(
      analyseSeries(
        seriesOf(90, () => 2),
        10,
      ).verdict,
    ).toBe('stable')
    expect(analyseSeries([1, 2], 1).verdict).toBe('too-short')
  })

  test('takes a cyclic load over whole cycles, so that a part of one does not bend the mean', () => {
    const analysis = analyseSeries(
      seriesOf(1837, (i) => (i % 100 < 25 ? 5 : 1)),
      1,
    )
    expect(analysis.cycle).toEqual({ periodSeconds: 100, cycles: 12 })
    expect(analysis.used).toBe(1200)
    expect(analysis.meanW).toBeCloseTo(2, 12)
    expect(analysis.verdict).toBe('stable')
    expect(analysis.slopeWPerHour).toBeCloseTo(0, 9)
    expect(analysis.standardUncertaintyW).toBe(0)
  })

  test('compares an even number of cycles, half with half', () => {
    const analysis = analyseSeries(
      seriesOf(1500, (i) => (i % 180 < 60 ? 4 : 1)),
      1,
    )
    expect(analysis.cycle?.cycles).toBe(5)
    expect(analysis.used).toBe(4 * 180)
  })

  test('takes the slope of a cyclic load from the middle of one period to that of the next', () => {
    const analysis = analyseSeries(
      seriesOf(3000, (i) => (i % 100 < 25 ? 5 : 1) + rising(0, 0.5)(i)),
      1,
    )
    expect(analysis.slopeWPerHour).toBeCloseTo(0.5, 2)
    expect(analysis.verdict).toBe('unstable')
  })

  test('asks for four cycles', () => {
    const analysis = analyseSeries(
      seriesOf(1800, (i) => (i % 550 < 100 ? 5 : 1)),
      1,
    )
    expect(analysis.cycle?.cycles).toBe(2)
    expect(analysis.verdict).toBe('too-short')
    expect(
      analyseSeries(
        seriesOf(3600, (i) => (i % 550 < 100 ? 5 : 1)),
        1,
      ).verdict,
    ).toBe('stable')
  })

  test('counts cycles, not samples, for the scatter of a cyclic load', () => {
    const next = noise(3)
    let height = 0
    const analysis = analyseSeries(
      seriesOf(3000, (i) => {
        if (i % 100 === 0) height = next()
        return i % 100 < 25 ? 5 + height : 1
      }),
      1,
    )
    expect(analysis.effectiveSamples).toBeLessThanOrEqual(20)
    expect(analysis.standardUncertaintyW).toBeGreaterThan(0.02)
    expect(analysis.degreesOfFreedom).toBeLessThanOrEqual(19)
  })

  test('says of a series of zeros that it is stable at 0 W', () => {
    const { verdict, meanW, slopeLimitWPerHour } = analyseSeries(
      seriesOf(900, () => 0),
      1,
    )
    expect({ verdict, meanW, slopeLimitWPerHour }).toEqual({
      verdict: 'stable',
      meanW: 0,
      slopeLimitWPerHour: 0.01,
    })
  })

  test('gives the same for the same series, and leaves the series as it was', () => {
    const next = noise(4)
    const watts = Object.freeze(seriesOf(1000, () => 3 + 0.1 * next()))
    expect(analyseSeries(watts, 1)).toEqual(analyseSeries([...watts], 1))
  })
})

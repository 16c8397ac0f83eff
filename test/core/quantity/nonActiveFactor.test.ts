import { describe, expect, test } from 'vitest'
import { nonActiveFactor } from '../../../src/core/quantity/nonActiveFactor.ts'
import { triangular } from '../../../src/core/quantity/triangular.ts'

const RANGES = [
  { low: 0.3, typical: 0.45, high: 0.65 },
  { low: 0.3, typical: 0.3, high: 1 },
  { low: 0.05, typical: 1, high: 1 },
  { low: 0.5, typical: 0.5002, high: 0.501 },
  { low: 0.5, typical: 0.50002, high: 0.50005 },
]
const CELLS = 20_000
const probabilities = Array.from({ length: CELLS }, (_, i) => (i + 0.5) / CELLS)

describe.each(RANGES)('sqrt(1 - PF^2) for a power factor of $low, $typical, $high', (range) => {
  const x = triangular(range)
  const w = nonActiveFactor(range)
  const values = probabilities.map((p) => Math.sqrt(1 - x.quantile(p) ** 2))

  test('has the mean and the mean square of the transformed values', () => {
    const mean = values.reduce((sum, value) => sum + value / CELLS, 0)
    const meanSquare = values.reduce((sum, value) => sum + value ** 2 / CELLS, 0)
    expect(w.mean).toBeCloseTo(mean, 6)
    expect(w.meanSquare).toBeCloseTo(meanSquare, 6)
  })

  test('is large where the power factor is small', () => {
    expect(w.min).toBeCloseTo(Math.sqrt(1 - range.high ** 2), 7)
    expect(w.max).toBeCloseTo(Math.sqrt(1 - range.low ** 2), 7)
    for (const p of [0.05, 0.5, 0.95]) {
      expect(w.quantile(p)).toBeCloseTo(Math.sqrt(1 - x.quantile(1 - p) ** 2), 7)
      expect(w.cdf(w.quantile(p))).toBeCloseTo(p, 6)
    }
  })

  test('has the expected shortfall that its distribution function integrates to', () => {
    for (const p of [0.1, 0.5, 0.9]) {
      const at = w.quantile(p)
      const shortfall = values.reduce((sum, value) => sum + Math.max(0, at - value) / CELLS, 0)
      expect(w.cdfIntegral(at)).toBeCloseTo(shortfall, 6)
    }
    expect([w.cdf(w.min - 0.01), w.cdf(w.max), w.cdfIntegral(w.min)]).toEqual([0, 1, 0])
    expect(w.cdfIntegral(w.max + 0.5)).toBeCloseTo(w.max + 0.5 - w.mean, 9)
  })
})

test('a power factor that was read leaves one share', () => {
  expect(nonActiveFactor({ low: 0.6, typical: 0.6, high: 0.6 }).mean).toBeCloseTo(0.8, 12)
  expect(nonActiveFactor({ low: 1, typical: 1, high: 1 }).mean).toBe(0)
})

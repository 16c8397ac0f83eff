import { describe, expect, test } from 'vitest'
import { drawingOf } from '../../../src/core/quantity/drawing.ts'
import { exact } from '../../../src/core/quantity/exact.ts'
import { intervalOfSum } from '../../../src/core/quantity/intervalOfSum.ts'
import {
  intervalOfDraws,
  monteCarloDraws,
  monteCarloInterval,
} from '../../../src/core/quantity/monteCarlo.ts'
import { rectangularSum } from '../../../src/core/quantity/rectangularSum.ts'
import type { Drawing, Term } from '../../../src/core/quantity/term.ts'
import { twoPieceLognormal } from '../../../src/core/quantity/twoPieceLognormal.ts'
import { uniformStream } from '../../../src/core/quantity/uniformStream.ts'

const draw: Term = { coefficient: 2, factors: [twoPieceLognormal({ low: 0.4, typical: 1, high: 3 })] }
const read = (value: number, meter: string | null = 'm', counts = 0): Term => ({
  coefficient: 1,
  factors: [],
  metered: { value, gain: 0.1, counts, meter },
})
const sharing = (coefficient: number): Term => ({
  coefficient,
  factors: [],
  shared: { key: 'voltage', distribution: rectangularSum(1, 0.06) },
})

describe('a stream of random numbers', () => {
  const taken = (seed: number, name: string, count = 1000) => {
    const next = uniformStream(seed, name)
    return Array.from({ length: count }, () => next())
  }

  test('is the same for the same seed and name, and another for another', () => {
    expect(taken(1, 'a')).toEqual(taken(1, 'a'))
    expect(taken(1, 'a')).not.toEqual(taken(2, 'a'))
    expect(taken(1, 'a')).not.toEqual(taken(1, 'b'))
  })

  test('is uniform between 0 and 1, ends excluded', () => {
    const values = taken(5, 'even', 100_000)
    expect(values.every((value) => value > 0 && value < 1)).toBe(true)
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length
    // Four standard errors of the mean and of the share below a tenth.
    expect(Math.abs(mean - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / values.length))
    const share = values.filter((value) => value < 0.1).length / values.length
    expect(Math.abs(share - 0.1)).toBeLessThan(4 * Math.sqrt(0.09 / values.length))
  })

  test('knows nothing of its neighbours', () => {
    const [a, b] = [taken(1, '0 factor 0', 50_000), taken(1, '1 factor 0', 50_000)]
    const covariance = a.reduce((sum, value, i) => sum + (value - 0.5) * (b[i]! - 0.5), 0) / a.length
    expect(Math.abs(covariance * 12)).toBeLessThan(4 / Math.sqrt(a.length))
  })
})

describe('draws of a sum', () => {
  test('are the same for the same seed', () => {
    expect(monteCarloDraws([draw, read(5)], 100, 7)).toEqual(monteCarloDraws([draw, read(5)], 100, 7))
    expect(monteCarloDraws([draw], 100, 7)).not.toEqual(monteCarloDraws([draw], 100, 8))
  })

  test('share a meter’s gain and a shared factor, draw for draw', () => {
    const both = monteCarloDraws([read(5), read(15)], 50, 1)
    monteCarloDraws([read(20)], 50, 1).forEach((value, i) => expect(both[i]).toBeCloseTo(value, 10))
    const voltages = monteCarloDraws([sharing(1), sharing(3)], 50, 1)
    monteCarloDraws([sharing(4)], 50, 1).forEach((value, i) => expect(voltages[i]).toBeCloseTo(value, 10))
    const apart = monteCarloDraws([read(5, null), read(15, null)], 50, 1)
    expect(apart.some((value, i) => Math.abs(value - both[i]!) > 1e-6)).toBe(true)
  })

  test('are never below zero', () => {
    const values = monteCarloDraws([read(0, 'm', 1)], 1000, 1)
    expect(Math.min(...values)).toBe(0)
    expect(values.filter((value) => value === 0).length).toBeGreaterThan(400)
  })

  test('of a stream are those of every term that has it', () => {
    const drawn = (stream: number): Term => ({ ...draw, drawn: { stream, drawing: drawingOf(10, 1) } })
    const alone = monteCarloDraws([drawn(3)], 20, 1)
    expect(monteCarloDraws([{ ...drawn(3), coefficient: 4 }], 20, 1)).toEqual(alone.map((value) => 2 * value))
    // Without a stream a term has that of its place.
    expect(monteCarloDraws([draw], 20, 1)).toEqual(monteCarloDraws([drawn(0)], 20, 1))
  })

  test('take exact factors and a factor over all', () => {
    const certain: Term = { coefficient: 2, factors: [exact(3)] }
    expect([...monteCarloDraws([certain], 3, 1)]).toEqual([6, 6, 6])
    expect([...monteCarloDraws([certain], 3, 1, exact(0.5))]).toEqual([3, 3, 3])
    const priced = monteCarloDraws([certain], 100, 1, rectangularSum(1, 0.5))
    expect(priced.every((value) => value > 3 && value < 9)).toBe(true)
  })

  test('agree with the convolved interval within their own noise', () => {
    const terms = [draw, read(5, 'm', 0.3), read(2), sharing(3), sharing(1)]
    const [drawn, convolved] = [monteCarloInterval(terms, 0.9, 200_000, 1), intervalOfSum(terms, 0.9)]
    const width = convolved.high - convolved.low
    for (const end of ['low', 'high', 'expected'] as const)
      expect(Math.abs(drawn[end] - convolved[end])).toBeLessThan(0.01 * width)
  })
})

describe('the interval of draws', () => {
  test('has ends between the draws next to them', () => {
    const sorted = Float64Array.from({ length: 11 }, (_, i) => i * i)
    expect(intervalOfDraws(sorted, 0.5)).toEqual({ expected: 35, low: 6.5, high: 56.5 })
    expect(intervalOfDraws(sorted, 0.9)).toEqual({
      expected: 35,
      low: expect.closeTo(0.5, 9) as number,
      high: expect.closeTo(90.5, 9) as number,
    })
  })

  test('of a single draw is that draw', () => {
    expect(intervalOfDraws(Float64Array.of(4), 0.9)).toEqual({ expected: 4, low: 4, high: 4 })
  })
})

describe('a sum that is to be drawn', () => {
  const drawnBy = (drawing: Drawing): Term[] => [
    { ...draw, drawn: { drawing, stream: 0 } },
    { ...read(5), drawn: { drawing, stream: 1 } },
  ]

  test('is drawn, and not convolved', () => {
    const terms = drawnBy(drawingOf(2000, 3))
    expect(intervalOfSum(terms, 0.9)).toEqual(monteCarloInterval(terms, 0.9, 2000, 3))
  })

  test('gives the same whether its draws are kept or made anew', () => {
    const drawing = drawingOf(2000, 3)
    const [terms, others] = [drawnBy(drawing), drawnBy(drawing)]
    const first = intervalOfSum(terms, 0.9)
    const outer = rectangularSum(1, 0.2)
    expect(intervalOfSum(terms, 0.5)).toEqual(monteCarloInterval(terms, 0.5, 2000, 3))
    expect(intervalOfSum(terms, 0.9, outer)).toEqual(monteCarloInterval(terms, 0.9, 2000, 3, outer))
    expect(intervalOfSum(others.slice(1), 0.9)).toEqual(monteCarloInterval(others.slice(1), 0.9, 2000, 3))
    expect(intervalOfSum(terms, 0.9)).toEqual(first)
  })
})

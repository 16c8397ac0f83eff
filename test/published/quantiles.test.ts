import { compiled, ndtr, ndtri, stdtri } from 'cephes'
import { describe, expect, test } from 'vitest'
import type { Distribution } from '../../src/core/quantity/distribution.ts'
import { normalCdf, normalQuantile } from '../../src/core/quantity/normal.ts'
import { rectangularSum } from '../../src/core/quantity/rectangularSum.ts'
import { studentT } from '../../src/core/quantity/studentT.ts'
import { tabulatedNormalCdf } from '../../src/core/quantity/tabulatedNormal.ts'
import { triangular } from '../../src/core/quantity/triangular.ts'
import { twoPieceLognormal } from '../../src/core/quantity/twoPieceLognormal.ts'
import { relativeError } from './support/printed.ts'
import {
  PROBABILITIES,
  type Reference,
  RECTANGULAR_SUM,
  STUDENT_T,
  TRIANGULAR,
  TWO_PIECE_LOGNORMAL,
} from './support/referenceQuantiles.ts'

/*
 * Reference libraries, mark C: Cephes (S. L. Moshier, Methods and Programs for Mathematical Functions, 1989) as npm's
 * `cephes`, at run time; SciPy 1.17.1 and mpmath 1.3.0 as figures in support/referenceQuantiles.ts, where Cephes has no
 * function. In the tails of the normal distribution Cephes is right to 1e-15 itself (against mpmath).
 */
await compiled

const evenly = (from: number, to: number, count: number) =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count)
const largest = (values: readonly number[]) => values.reduce((most, value) => Math.max(most, value), 0)

describe('normal distribution against Cephes', () => {
  test('[C] the distribution function is right to 1e-15 absolute from -38 to 38', () => {
    expect(largest(evenly(-38, 38, 50_000).map((z) => Math.abs(normalCdf(z) - ndtr(z))))).toBeLessThan(1e-15)
  })

  test('[C] the quantile function is right to 1e-12, relative in the tails', () => {
    const body = evenly(1e-5, 1 - 1e-5, 50_000).map((p) => Math.abs(normalQuantile(p) - ndtri(p)))
    const tails = evenly(-300, -5, 2_000).map((e) => relativeError(normalQuantile(10 ** e), ndtri(10 ** e)))
    expect(largest(body)).toBeLessThan(1e-12)
    expect(largest(tails)).toBeLessThan(1e-12)
  })

  // mpmath at 60 digits and more.
  test.each([
    [1e-300, -37.0470962993612],
    [1e-20, -9.262340089798407],
    [1e-10, -6.361340902404057],
    [1e-5, -4.264890793922825],
    [0.025, -1.9599639845400543],
    [0.3, -0.5244005127080408],
    [0.975, 1.9599639845400543],
  ])('[C] the quantile at %d is %d', (p, z) => {
    expect(relativeError(normalQuantile(p), z)).toBeLessThan(1e-12)
  })

  test('[C] the quantile function undoes the distribution function', () => {
    const back = evenly(-7, 5, 5_000).map((z) => Math.abs(normalCdf(normalQuantile(ndtr(z))) - ndtr(z)))
    expect(largest(back)).toBeLessThan(1e-15)
  })

  test('[C] the tabulated distribution function is right to the 1e-11 that it claims', () => {
    const errors = evenly(-9, 9, 90_000).map((z) => Math.abs(tabulatedNormalCdf(z) - ndtr(z)))
    expect(largest(errors)).toBeLessThan(1e-11)
  })

  test('control: the rounded 1.6449 and 1.96 fail the check', () => {
    expect(relativeError(1.6449, normalQuantile(0.95))).toBeGreaterThan(1e-6)
    expect(Math.abs(normalCdf(1.96) - 0.975)).toBeGreaterThan(1e-6)
  })
})

const FAMILIES: readonly (readonly [
  string,
  readonly Reference[],
  (...given: Reference['given']) => Distribution,
])[] = [
  [
    'two-piece lognormal',
    TWO_PIECE_LOGNORMAL,
    (low, typical, high) => twoPieceLognormal({ low, typical, high }),
  ],
  ['triangular', TRIANGULAR, (low, typical, high) => triangular({ low, typical, high })],
  ['rectangular sum', RECTANGULAR_SUM, rectangularSum],
]
const ROWS = FAMILIES.flatMap(([name, references, make]) =>
  references.map(
    (reference) => [name, reference.given.join(', '), reference, make(...reference.given)] as const,
  ),
)

describe('distributions against SciPy and mpmath', () => {
  test.each(ROWS)('[C] %s(%s): quantiles to 1e-12', (_, __, { quantiles }, own) => {
    PROBABILITIES.forEach((p, i) =>
      expect(Math.abs(own.quantile(p) - quantiles[i]!)).toBeLessThanOrEqual(
        1e-12 * Math.max(1, quantiles[i]!),
      ),
    )
  })

  test.each(ROWS)('[C] %s(%s): distribution function to 1e-12', (_, __, { at }, own) => {
    for (const [x, probability] of at) expect(Math.abs(own.cdf(x) - probability)).toBeLessThan(1e-12)
  })

  test.each(ROWS)('[C] %s(%s): mean and mean square to 1e-12', (_, __, { mean, meanSquare }, own) => {
    expect(relativeError(own.mean, mean)).toBeLessThan(1e-12)
    expect(relativeError(own.meanSquare, meanSquare)).toBeLessThan(1e-12)
  })

  // The lognormal's integral comes from the table that is right to 1e-11, times what it is a share of.
  test.each(ROWS)('[C] %s(%s): integral of the distribution function to 1e-9', (_, __, reference, own) => {
    for (const [x, , integral] of reference.at)
      expect(Math.abs(own.cdfIntegral(x) - integral)).toBeLessThan(1e-9 * Math.max(1, reference.mean))
  })

  test('[C] a two-piece lognormal has the quantiles of Cephes’ normal on either side of its median', () => {
    const own = twoPieceLognormal({ low: 0.5, typical: 2, high: 9 })
    for (const p of evenly(1e-6, 1 - 1e-6, 5_000)) {
      const spread = (p < 0.5 ? Math.log(2 / 0.5) : Math.log(9 / 2)) / ndtri(0.95)
      expect(relativeError(own.quantile(p), 2 * Math.exp(spread * ndtri(p)))).toBeLessThan(1e-12)
    }
  })

  test('control: one spread for both sides fails the check', () => {
    const { given, quantiles } = TWO_PIECE_LOGNORMAL[0]!
    const [, typical, high] = given
    const symmetric = twoPieceLognormal({ low: typical ** 2 / high, typical, high })
    expect(relativeError(symmetric.quantile(0.95), quantiles[5]!)).toBeLessThan(1e-12)
    expect(relativeError(symmetric.quantile(0.05), quantiles[1]!)).toBeGreaterThan(0.1)
  })

  test('control: a normal of the same mean and spread fails the check of the trapezoid', () => {
    const { mean, meanSquare, quantiles } = RECTANGULAR_SUM[0]!
    const normal = mean + Math.sqrt(meanSquare - mean * mean) * normalQuantile(0.999)
    expect(Math.abs(normal - quantiles[6]!)).toBeGreaterThan(0.01)
  })
})

describe('Student’s t against Cephes, SciPy and mpmath', () => {
  /** On 1,000, so that nothing is cut off at zero. */
  const quantileOf = (p: number, degrees: number) => studentT(1000, 1, degrees).quantile(p) - 1000

  test.each([3, 4, 5, 8, 16, 25, 30])(
    '[C] %d degrees of freedom: quantiles of Cephes to 1e-11',
    (degrees) => {
      for (const p of [0.001, 0.025, 0.05, 0.3, 0.5, 0.7, 0.95, 0.975, 0.995])
        expect(Math.abs(quantileOf(p, degrees) - (p === 0.5 ? 0 : stdtri(degrees, p)))).toBeLessThan(1e-11)
    },
  )

  test.each(STUDENT_T)('[C] %d degrees of freedom: quantiles of mpmath to 1e-11', (degrees, quantiles) => {
    ;[0.001, 0.05, 0.25, 0.75, 0.95, 0.999].forEach((p, i) =>
      expect(Math.abs(quantileOf(p, degrees) - quantiles[i]!)).toBeLessThan(1e-11),
    )
  })

  // M: JCGM 100:2008 (GUM), table G.2.
  test.each([
    [5, 0.95, '2.57'],
    [16, 0.99, '2.92'],
    [20, 0.9545, '2.13'],
    [50, 0.95, '2.01'],
  ])('[M] GUM table G.2: %d degrees of freedom at %d have t = %s', (degrees, coverage, printed) => {
    expect(Math.abs(quantileOf((1 + coverage) / 2, degrees) - Number(printed))).toBeLessThan(0.005 + 1e-9)
  })

  test('control: the normal quantile fails the check of five degrees of freedom', () => {
    expect(relativeError(normalQuantile(0.975), stdtri(5, 0.975))).toBeGreaterThan(0.2)
  })
})

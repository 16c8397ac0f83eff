import { describe, expect, test } from 'vitest'
import type { Distribution } from '../../src/core/quantity/distribution.ts'
import { intervalOfSum } from '../../src/core/quantity/intervalOfSum.ts'
import { monteCarloDraws, monteCarloInterval } from '../../src/core/quantity/monteCarlo.ts'
import { rectangularSum } from '../../src/core/quantity/rectangularSum.ts'
import { termMean, termVariance } from '../../src/core/quantity/term.ts'
import { varianceOfSum } from '../../src/core/quantity/varianceOfSum.ts'
import { ROUNDING, relativeError, unitsOff } from './support/printed.ts'
import { propagate, withoutCorrelation } from './support/propagate.ts'
import { meansOf } from './support/repeated.ts'
import { sharedTerms } from './support/sharedTerms.ts'

/*
 * JCGM 100:2008 (GUM), H.2: simultaneous resistance and reactance, five sets of V, I and phi observed together.
 *
 *   R = V cos(phi) / I,   X = V sin(phi) / I,   Z = V / I
 *
 * Data: V, git:cran/propagate@60718ff data/H.2.rda. Results: C from the data, in agreement with V, git:MSLNZ/GTC docs
 * GUM_H2.rst, which prints 127.732(70), 219.85(30), 254.26(24).
 *
 * What the core cannot express: a correlation between two inputs as such, a quotient, and a negative correlation.
 * What it can, and what is checked: the product of independent factors (every correlation dropped), and the
 * covariance of terms that share factors, which is how meters and the supply correlate readings in a household. X and
 * Z have positively correlated relative inputs (V, 1/I, sin phi), so their published uncertainty must come out of
 * shared factors; R has negative ones, so the core must not be used for such a quantity, and the control shows it.
 */
const SETS = [
  [5.007, 19.663e-3, 1.0456],
  [4.994, 19.639e-3, 1.0438],
  [5.005, 19.64e-3, 1.0468],
  [4.99, 19.685e-3, 1.0428],
  [4.999, 19.678e-3, 1.0433],
] as const
const { means, covariance } = meansOf([0, 1, 2].map((column) => SETS.map((set) => set[column]!)))
const [volts, amperes, phase] = means as [number, number, number]

type Model = (inputs: readonly number[]) => number
const RESISTANCE: Model = ([v, i, phi]) => (v! * Math.cos(phi!)) / i!
const REACTANCE: Model = ([v, i, phi]) => (v! * Math.sin(phi!)) / i!
const IMPEDANCE: Model = ([v, i]) => v! / i!

/** Relative change of V, 1/I and the function of phi with their inputs. */
const relativeSlopes = (perPhase: number) => [1 / volts, -1 / amperes, perPhase]
const QUANTITIES = [
  ['R', RESISTANCE, relativeSlopes(-Math.tan(phase)), Math.cos(phase), '127.732', '0.0711', '0.070'],
  ['X', REACTANCE, relativeSlopes(1 / Math.tan(phase)), Math.sin(phase), '219.847', '0.2956', '0.30'],
  ['Z', IMPEDANCE, relativeSlopes(0), 1, '254.260', '0.2363', '0.24'],
] as const

/** Covariance of the three factors, each over its value; a factor without spread is left out. */
function relativeCovariance(slopes: readonly number[]): number[][] {
  const used = [0, 1, 2].filter((i) => slopes[i] !== 0)
  return used.map((i) => used.map((j) => slopes[i]! * slopes[j]! * covariance[i]![j]!))
}

/** The three factors as the core multiplies them: independent, with their means and relative uncertainties. */
function independentFactors(slopes: readonly number[], ofPhase: number): Distribution[] {
  const factor = (mean: number, i: number) =>
    rectangularSum(mean, mean * Math.abs(slopes[i]!) * Math.sqrt(3 * covariance[i]![i]!))
  return [factor(volts, 0), factor(1 / amperes, 1), factor(ofPhase, 2)]
}

describe('GUM H.2 (JCGM 100:2008)', () => {
  test.each(QUANTITIES)('%s: the core’s product of the mean factors is as published [C]', (...quantity) => {
    const [, model, slopes, ofPhase, value] = quantity
    const product = termMean({ coefficient: 1, factors: independentFactors(slopes, ofPhase) })
    expect(unitsOff(product, value)).toBeLessThan(ROUNDING)
    expect(relativeError(product, model(means))).toBeLessThan(1e-12)
  })

  test.each(QUANTITIES)(
    '%s: with every correlation dropped, the core’s product spreads as the law of propagation says [C]',
    (_, model, slopes, ofPhase) => {
      const product = Math.sqrt(
        termVariance({ coefficient: 1, factors: independentFactors(slopes, ofPhase) }),
      )
      const dropped = propagate(model, means, withoutCorrelation(covariance))
      // Second-order terms of the exact product are below a millionth here.
      expect(relativeError(product, dropped)).toBeLessThan(1e-5)
    },
  )

  test.each(QUANTITIES.slice(1))(
    '%s: terms that share factors vary together as published [C, V]',
    (_, model, slopes, __, ___, printed, ofGtc) => {
      const terms = sharedTerms(relativeCovariance(slopes))
      const uncertainty = model(means) * Math.sqrt(varianceOfSum(terms).total)
      expect(unitsOff(uncertainty, printed)).toBeLessThan(ROUNDING)
      // GTC starts from inputs that are rounded already, so its last digit may differ by one.
      expect(unitsOff(uncertainty, ofGtc)).toBeLessThan(1)
      expect(relativeError(uncertainty, propagate(model, means, covariance))).toBeLessThan(1e-6)
    },
  )

  test.each(QUANTITIES.slice(1))(
    '%s: Monte Carlo and lattice agree on terms that share factors [C]',
    (_, model, slopes, __, ___, printed) => {
      const terms = sharedTerms(relativeCovariance(slopes))
      const draws = monteCarloDraws(terms, 50_000, 7)
      const mean = draws.reduce((sum, draw) => sum + draw, 0) / draws.length
      const square = draws.reduce((sum, draw) => sum + (draw - mean) ** 2, 0) / (draws.length - 1)
      expect(relativeError(model(means) * Math.sqrt(square), Number(printed))).toBeLessThan(0.01)
      const lattice = intervalOfSum(terms, 0.9)
      const drawn = monteCarloInterval(terms, 0.9, 200_000, 3)
      const width = drawn.high - drawn.low
      expect(Math.abs(lattice.low - drawn.low)).toBeLessThan(0.01 * width)
      expect(Math.abs(lattice.high - drawn.high)).toBeLessThan(0.01 * width)
    },
  )

  test.each(QUANTITIES)('control: dropping the correlation of %s changes its uncertainty', (...quantity) => {
    const [, model, slopes, ofPhase, , printed] = quantity
    const product = Math.sqrt(termVariance({ coefficient: 1, factors: independentFactors(slopes, ofPhase) }))
    expect(unitsOff(product, printed)).toBeGreaterThan(100)
    expect(relativeError(product, propagate(model, means, covariance))).toBeGreaterThan(0.1)
  })

  test.each(QUANTITIES.slice(1))(
    'control: shared factors of %s that are shared no longer give another result',
    (...quantity) => {
      const [, model, slopes, , , printed] = quantity
      const apart = sharedTerms(relativeCovariance(slopes), false)
      expect(unitsOff(model(means) * Math.sqrt(varianceOfSum(apart).total), printed)).toBeGreaterThan(100)
    },
  )

  test('R needs negative correlation, which sums of non-negative shared factors cannot express', () => {
    expect(() => sharedTerms(relativeCovariance(QUANTITIES[0][2]))).toThrow('negative correlation')
  })
})

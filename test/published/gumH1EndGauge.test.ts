import { describe, expect, test } from 'vitest'
import { type Distribution, variance } from '../../src/core/quantity/distribution.ts'
import { monteCarloDraws } from '../../src/core/quantity/monteCarlo.ts'
import { rectangularSum } from '../../src/core/quantity/rectangularSum.ts'
import { studentT } from '../../src/core/quantity/studentT.ts'
import { type Term, termVariance } from '../../src/core/quantity/term.ts'
import { varianceOfSum } from '../../src/core/quantity/varianceOfSum.ts'
import { ROUNDING, unitsOff } from './support/printed.ts'
import { effectiveDegreesOfFreedom, propagate } from './support/propagate.ts'

/*
 * JCGM 100:2008 (GUM), H.1: end-gauge calibration.
 *
 *   l = l_s + d - l_s (delta_alpha theta + alpha_s delta_theta),   d = d0 + d1 + d2,   theta = theta_bar + Delta
 *
 * Inputs: V, git:MSLNZ/GTC@1c165fc examples/GUM_H1.py. Lengths in nm, temperatures in °C.
 *
 * The core sums products of non-negative quantities, so the deviations about zero are moved above zero; only spreads
 * count here. It has no normal or arcsine distribution, and its t is cut off at zero: each input is a rectangle of the same standard
 * uncertainty, which is all that a variance knows. That alpha_s and theta are multiplied by deviations of mean zero
 * leaves them out of the first order, as in the GUM.
 */
const LENGTH_NM = 50_000_623
const EXPANSION = 11.5e-6
const THETA_BAR = -0.1

const spreadOf = (mean: number, uncertainty: number): Distribution =>
  rectangularSum(mean, uncertainty * Math.sqrt(3))
const term = (coefficient: number, factor: Distribution): Term => ({ coefficient, factors: [factor] })

const DEVIATION_OF_EXPANSION = 1e-6 / Math.sqrt(3)
const DIFFERENCE_OF_TEMPERATURE = 0.05 / Math.sqrt(3)
const BUDGET: readonly (readonly [name: string, term: Term, printedNm: string, degreesOfFreedom: number])[] =
  [
    ['standard l_s', term(1, spreadOf(LENGTH_NM, 25)), '25', 18],
    ['observations d0', term(1, spreadOf(215, 5.8)), '5.8', 24],
    ['random comparator d1', term(1, spreadOf(20, 3.9)), '3.9', 5],
    ['systematic comparator d2', term(1, spreadOf(20, 6.7)), '6.7', 8],
    ['expansion', term(LENGTH_NM * -THETA_BAR, spreadOf(2e-6, DEVIATION_OF_EXPANSION)), '2.9', 50],
    ['temperature', term(LENGTH_NM * EXPANSION, spreadOf(0.1, DIFFERENCE_OF_TEMPERATURE)), '16.6', 2],
  ]
const TERMS = BUDGET.map(([, one]) => one)
const { total, removedBy } = varianceOfSum(TERMS)

/** What the product of two quantities varies by beyond first order, nm. */
function secondOrder(coefficient: number, x: Distribution, y: Distribution): number {
  const first = coefficient ** 2 * (y.mean ** 2 * variance(x) + x.mean ** 2 * variance(y))
  return Math.sqrt(termVariance({ coefficient, factors: [x, y] }) - first)
}

describe('GUM H.1 (JCGM 100:2008)', () => {
  // V: git:MSLNZ/GTC@1c165fc prints the components in full; TN 1297 (1994), D.2, prints them as here.
  test.each(BUDGET.map(([name, , printed], i) => [name, printed, i] as const))(
    'the part of the %s is %s nm [V]',
    (_, printed, i) => {
      expect(unitsOff(Math.sqrt(removedBy[i]!), printed)).toBeLessThan(ROUNDING)
    },
  )

  test('u_c is 31.7 nm, and 32 nm as the GUM prints it [V]', () => {
    expect(unitsOff(Math.sqrt(total), '31.7')).toBeLessThan(ROUNDING)
    expect(unitsOff(Math.sqrt(total), '32')).toBeLessThan(ROUNDING)
  })

  test('the general law of propagation gives the same u_c as the core [V]', () => {
    const inputs = [LENGTH_NM, 215, 0, 0, EXPANSION, 0, 0, THETA_BAR]
    const uncertainties = [
      25,
      5.8,
      3.9,
      6.7,
      2e-6 / Math.sqrt(3),
      DEVIATION_OF_EXPANSION,
      DIFFERENCE_OF_TEMPERATURE,
      Math.hypot(0.2, 0.5 / Math.sqrt(2)),
    ]
    const covariance = uncertainties.map((u, i) => uncertainties.map((_, j) => (i === j ? u * u : 0)))
    const model = ([ls, d0, d1, d2, alpha, deltaAlpha, deltaTheta, theta]: readonly number[]) =>
      ls! + d0! + d1! + d2! - ls! * (deltaAlpha! * theta! + alpha! * deltaTheta!)
    expect(Math.abs(propagate(model, inputs, covariance) - Math.sqrt(total))).toBeLessThan(1e-3)
  })

  // V: u(d) = 9.7 nm and 25.6 degrees of freedom, git:cran/propagate@60718ff man/WelchSatter.Rd (GUM H.1.3.2).
  test('u(d) is 9.7 nm with 25.6 degrees of freedom [V]', () => {
    const parts = [1, 2, 3].map((i) => component(i))
    expect(unitsOff(Math.sqrt(removedBy[1]! + removedBy[2]! + removedBy[3]!), '9.7')).toBeLessThan(ROUNDING)
    // The GUM puts the rounded 9.7 nm into the formula; unrounded it is 25.75.
    expect(unitsOff(effectiveDegreesOfFreedom(parts), '25.6')).toBeLessThan(2)
  })

  // C: 16.8; the GUM truncates to 16 (H.1.6). U99 = 93 nm from [745, 931] nm about 838 nm in JCGM 101:2008, 9.5, table 11 (V2,
  // public file 68874701993).
  test('nu_eff truncates to 16, k99 is 2.92 and U99 is 93 nm [V2]', () => {
    const degrees = Math.floor(effectiveDegreesOfFreedom(BUDGET.map((_, i) => component(i))))
    const factor = studentT(100, 1, degrees).quantile(0.995) - 100
    expect(degrees).toBe(16)
    expect(unitsOff(factor, '2.92')).toBeLessThan(ROUNDING)
    // The GUM multiplies figures that are rounded already: 2.92 x 32 = 93.44; unrounded it is 92.5.
    expect(unitsOff(2.92 * Math.round(Math.sqrt(total)), '93')).toBeLessThan(ROUNDING)
    expect(unitsOff(factor * Math.sqrt(total), '93')).toBeLessThan(1)
  })

  // V: TN 1297 (1994), D.2, table: 1.7, 5.8 and 10.2 nm; H.1.7 of the GUM: 11.7 and 1.7 nm, u_c = 34 nm.
  test('the exact variance of products holds the second order: 11.7 and 1.7 nm, and 34 nm in all [V]', () => {
    const deviation = spreadOf(2e-6, DEVIATION_OF_EXPANSION)
    const ofMean = secondOrder(LENGTH_NM, deviation, spreadOf(1, 0.2))
    const ofCycle = secondOrder(LENGTH_NM, deviation, spreadOf(2, 0.5 / Math.sqrt(2)))
    const ofExpansion = secondOrder(
      LENGTH_NM,
      spreadOf(EXPANSION, 2e-6 / Math.sqrt(3)),
      spreadOf(0.1, DIFFERENCE_OF_TEMPERATURE),
    )
    expect(unitsOff(ofMean, '5.8')).toBeLessThan(ROUNDING)
    expect(unitsOff(ofCycle, '10.2')).toBeLessThan(ROUNDING)
    expect(unitsOff(Math.hypot(ofMean, ofCycle), '11.7')).toBeLessThan(ROUNDING)
    expect(unitsOff(ofExpansion, '1.7')).toBeLessThan(ROUNDING)
    const all = Math.hypot(Math.sqrt(total), ofMean, ofCycle, ofExpansion)
    expect(unitsOff(all, '34')).toBeLessThan(ROUNDING)
  })

  test('Monte Carlo draws of the same budget spread by 31.7 nm [V]', () => {
    const draws = monteCarloDraws(TERMS, 100_000, 1)
    const mean = draws.reduce((sum, draw) => sum + draw, 0) / draws.length
    const square = draws.reduce((sum, draw) => sum + (draw - mean) ** 2, 0) / (draws.length - 1)
    // 0.4 nm: five standard errors of a standard deviation from 100,000 draws are 0.35 nm.
    expect(Math.abs(Math.sqrt(square) - 31.7)).toBeLessThan(0.4)
  })

  test('control: without the second order the total is not 34 nm', () => {
    expect(unitsOff(Math.sqrt(total), '34')).toBeGreaterThan(2)
  })

  test('control: without the thermometer’s part u_c is not 32 nm', () => {
    expect(unitsOff(Math.sqrt(varianceOfSum(TERMS.slice(0, -1)).total), '32')).toBeGreaterThan(2)
  })
})

function component(i: number) {
  return { uncertainty: Math.sqrt(removedBy[i]!), degreesOfFreedom: BUDGET[i]![3] }
}

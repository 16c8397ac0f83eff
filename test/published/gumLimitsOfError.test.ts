import { describe, expect, test } from 'vitest'
import { type Distribution, variance } from '../../src/core/quantity/distribution.ts'
import { normalQuantile } from '../../src/core/quantity/normal.ts'
import { rectangularSum } from '../../src/core/quantity/rectangularSum.ts'
import { triangular } from '../../src/core/quantity/triangular.ts'
import { varianceOfSum } from '../../src/core/quantity/varianceOfSum.ts'
import { ROUNDING, relativeError, unitsOff } from './support/printed.ts'

/*
 * JCGM 100:2008 (GUM), 4.3: from what a manual, a label or experience gives as limits to a standard uncertainty.
 *
 *   rectangular +-a: u = a/sqrt 3 (4.3.7, equation 7)      triangular +-a: u = a/sqrt 6 (4.3.9, equation 9b)
 *   trapezoid with base 2a and top 2a beta: u^2 = a^2 (1 + beta^2)/6 (4.3.9, equation 9a)
 */
const uncertaintyOf = (x: Distribution) => Math.sqrt(variance(x))
const triangle = (middle: number, a: number) =>
  uncertaintyOf(triangular({ low: middle - a, typical: middle, high: middle + a }))

describe('GUM 4.3 (JCGM 100:2008)', () => {
  test.each([
    [
      'V',
      '3.04 % of a field meter',
      100,
      3.04,
      '1.755',
      'manual of a field meter, easymanua.ls narda ehp-50-g p. 14',
    ],
    ['V', '1.5 of a purity', 99, 1.5, '0.87', 'Eurachem/CITAC QUAM, E.1, ilovetranslation QaAFid0tgpD'],
    ['V', '0.05 °C of a bath, H.1', 20, 0.05, '0.029', 'git:MSLNZ/GTC@1c165fc examples/GUM_H1.py'],
  ])('[%s] rectangular +-%s', (_, __, middle, halfWidth, printed) => {
    expect(unitsOff(uncertaintyOf(rectangularSum(middle, halfWidth)), printed)).toBeLessThan(ROUNDING)
  })

  test.each([
    ['M', '0.1 ml of a 100 ml flask', 100, 0.1, '0.04', 'Eurachem/CITAC QUAM:2012, example A1'],
    ['M', '1, the rule itself', 10, 1, '0.408', 'JCGM 100:2008, 4.3.9, equation 9b'],
  ])('[%s] triangular +-%s', (_, __, middle, halfWidth, printed) => {
    expect(unitsOff(triangle(middle, halfWidth), printed)).toBeLessThan(ROUNDING)
  })

  // M for the equation; the two errors of a meter, percent and counts, make the trapezoid.
  test.each([
    [1, 0],
    [1, 0.25],
    [1, 0.6],
    [1, 1],
    [0.05, 0.0081],
  ])('[M] the trapezoid of errors +-%d and +-%d has u^2 = a^2 (1 + beta^2)/6', (first, second) => {
    const [base, beta] = [first + second, (first - second) / (first + second)]
    const u = uncertaintyOf(rectangularSum(5, first, second))
    expect(relativeError(u, base * Math.sqrt((1 + beta * beta) / 6))).toBeLessThan(1e-12)
  })

  // V: 50 ml flask, +-0.06 ml and +-0.09 ml rectangular and u = 0.0669925368977769 ml as computed by a program of
  // another maker, ut.ee/katsekoda/GUM_examples/50_ml_flask.smu. Its third part, 0.00021/°C x 50 ml x +-4 °C, is M.
  test('[V] three rectangular limits of a flask add up in quadrature as printed', () => {
    const temperature = { coefficient: 50 * 0.00021, factors: [rectangularSum(10, 4)] }
    const limits = [0.06, 0.09].map((a) => ({ coefficient: 1, factors: [rectangularSum(50, a)] }))
    const { total } = varianceOfSum([...limits, temperature])
    expect(relativeError(Math.sqrt(total), 0.0669925368977769)).toBeLessThan(1e-6)
  })

  // M: JCGM 100:2008, 4.3.5 and 4.3.6 (u = 1.48 a for a fifty-fifty chance, u = a for two thirds), table G.1.
  test.each([
    ['M', 'half of the values: 1/1.48', 0.5, '0.676'],
    ['M', 'table G.1, 90 %', 0.9, '1.645'],
    ['M', 'table G.1, 95 %', 0.95, '1.960'],
    ['M', 'table G.1, 95.45 %', 0.9545, '2.000'],
    ['M', 'table G.1, 99 %', 0.99, '2.576'],
    ['M', 'table G.1, 99.73 %', 0.9973, '3.000'],
  ])('[%s] coverage factor of a normal quantity: %s', (_, __, coverage, printed) => {
    // 1.48 is itself rounded, and so are 95.45 % and 99.73 %.
    expect(unitsOff(normalQuantile((1 + coverage) / 2), printed)).toBeLessThan(2)
  })

  test('control: taking a limit of error for a standard uncertainty fails the check', () => {
    expect(unitsOff(3.04, '1.755')).toBeGreaterThan(100)
    expect(unitsOff(uncertaintyOf(rectangularSum(100, 3.04)), '3.04')).toBeGreaterThan(100)
  })

  test('control: a triangular limit is not a rectangular one', () => {
    expect(unitsOff(uncertaintyOf(rectangularSum(100, 0.1)), '0.04')).toBeGreaterThan(1)
  })
})

import { describe, expect, test } from 'vitest'
import { absorbSmall } from '../../../src/core/quantity/absorbSmall.ts'
import { closedForm } from '../../../src/core/quantity/closedForm.ts'
import { conditionedSums } from '../../../src/core/quantity/conditionedSums.ts'
import { exact } from '../../../src/core/quantity/exact.ts'
import { grouped } from '../../../src/core/quantity/grouped.ts'
import { rectangularSum } from '../../../src/core/quantity/rectangularSum.ts'
import { GrowingSum, type Sum } from '../../../src/core/quantity/sumNode.ts'
import type { Term } from '../../../src/core/quantity/term.ts'
import { treeOf } from '../../../src/core/quantity/treeOf.ts'
import { triangular } from '../../../src/core/quantity/triangular.ts'

const voltage = { key: 'voltage', distribution: rectangularSum(1, 0.06) }
const draw = (coefficient = 1): Term => ({ coefficient, factors: [rectangularSum(2, 1)] })
const reading = (fields: Partial<Term> = {}, meter: string | null = 'm', gain = 0.03): Term => ({
  coefficient: 1,
  factors: [],
  metered: { value: 5, gain, counts: 0.1, meter },
  ...fields,
})
const powerFactor = triangular({ low: 0.4, typical: 0.5, high: 0.6 })
const meanOf = ({ constant, nodes }: Sum) => nodes.reduce((sum, { mean }) => sum + mean, constant)
const varianceIn = ({ nodes }: Sum) => nodes.reduce((sum, { variance }) => sum + variance, 0)
const kindsOf = ({ nodes }: Sum) => nodes.map(({ kind }) => kind)

describe('a sum that is put together', () => {
  test('takes exact factors into the coefficient', () => {
    const sum = new GrowingSum()
    sum.addProduct(2, [exact(3), rectangularSum(1, 0.5), exact(5)])
    expect(sum.constant).toBe(0)
    expect(sum.nodes).toMatchObject([{ kind: 'product', coefficient: 30, mean: 30 }])
    expect(sum.nodes[0]!.variance).toBeCloseTo(900 * (0.25 / 3), 10)
  })

  test('holds what is certain, or times zero, as a constant', () => {
    const sum = new GrowingSum()
    sum.addProduct(2, [exact(3)])
    sum.addProduct(1, [])
    sum.addProduct(0, [rectangularSum(9, 1)])
    expect([sum.constant, sum.nodes.length]).toEqual([7, 0])
  })

  test('has the variance of a product with a shared factor', () => {
    const inner = new GrowingSum()
    inner.constant = 2
    inner.addProduct(1, [rectangularSum(3, 1)])
    const sum = new GrowingSum()
    sum.addScaled(rectangularSum(1, 0.3), inner)
    // E[V^2] E[A^2] - E[V]^2 E[A]^2 with Var(V) = 0.03, Var(A) = 1/3, E[A] = 5.
    expect(sum.nodes[0]!.mean).toBe(5)
    expect(sum.nodes[0]!.variance).toBeCloseTo(1.03 * (25 + 1 / 3) - 25, 10)
  })
})

describe('terms that share', () => {
  test('are grouped by their key; keys that occur once stand alone', () => {
    const [a, b, c, d] = [draw(1), { ...draw(2), shared: voltage }, { ...draw(3), shared: voltage }, draw(4)]
    const other = { ...draw(5), shared: { ...voltage, key: 'other' } }
    const key = (term: Term) => term.shared?.key
    expect(grouped([a, b, c, d, other], key)).toEqual({ alone: [a, d, other], groups: [[b, c]] })
    expect(grouped([a, d], key)).toEqual({ alone: [a, d], groups: [] })
    expect(grouped([b], key)).toEqual({ alone: [b], groups: [] })
    expect(grouped([], key)).toEqual({ alone: [], groups: [] })
  })

  test('a factor stand under it, also one that is the only one to have it', () => {
    const both = treeOf([{ ...draw(1), shared: voltage }, { ...draw(2), shared: voltage }, draw(3)])
    expect(kindsOf(both)).toEqual(['product', 'scaled'])
    expect(meanOf(both)).toBeCloseTo(12, 12)
    expect(treeOf([{ ...draw(1), shared: voltage }]).nodes).toMatchObject([{ factors: [{}, {}] }])
  })

  test('a meter with nothing uncertain beside it become one sum of readings and one of gains', () => {
    const sum = treeOf([reading(), reading({ coefficient: 2 })])
    expect(kindsOf(sum)).toEqual(['product', 'product', 'product'])
    expect(meanOf(sum)).toBeCloseTo(15, 12)
    // Counts of each, 0.1^2/3 and 2^2 0.1^2/3, and one gain of 3 % of 15.
    expect(varianceIn(sum)).toBeCloseTo((0.01 + 0.04 + 0.45 ** 2) / 3, 12)
  })

  test('a meter beside uncertain factors stand under its gain', () => {
    const sum = treeOf([reading({ factors: [powerFactor] }), reading()])
    expect(sum.nodes).toMatchObject([{ kind: 'scaled', mean: 5 + 2.5 }])
  })

  test('a meter whose counts may push a reading below zero stand under its gain', () => {
    const small = reading({ metered: { value: 0.05, gain: 0.03, counts: 0.1, meter: 'm' } })
    expect(kindsOf(treeOf([small, reading()]))).toEqual(['scaled'])
  })

  test.each([
    ['that has no name', reading({}, null), reading({}, null)],
    ['without a percent part', reading({}, 'm', 0), reading({}, 'm', 0)],
    ['that is not the same', reading({}, 'm'), reading({}, 'n')],
  ])('a meter %s are independent', (_, one, other) => {
    const sum = treeOf([one, other])
    expect(kindsOf(sum)).toEqual(['product', 'product'])
    expect(varianceIn(sum)).toBeCloseTo(2 * (0.01 / 3 + (25 * one.metered!.gain ** 2) / 3), 12)
  })
})

describe('a meter that reads within a shared factor and outside of it', () => {
  const inside = { shared: voltage, factors: [powerFactor] }
  const crossing = [reading(inside), reading(inside), reading()]

  test('makes eight trees of equal parts, of the same mean', () => {
    const sums = conditionedSums(crossing)
    expect(sums).toHaveLength(8)
    const mean = sums.reduce((sum, each) => sum + meanOf(each) / 8, 0)
    expect(mean).toBeCloseTo(10, 10)
  })

  test('keeps the variance of the shared factor: between the trees and within each', () => {
    const sums = conditionedSums(crossing)
    const means = sums.map(meanOf)
    const between = means.reduce((sum, mean) => sum + (mean - 10) ** 2 / 8, 0)
    const within = sums.reduce((sum, each) => sum + varianceIn(each) / 8, 0)
    // Var of 5 V, and what the rest has without V.
    const rest = varianceIn(
      treeOf([reading({ factors: [powerFactor] }), reading({ factors: [powerFactor] }), reading()]),
    )
    expect(between + within).toBeCloseTo(25 * (0.06 ** 2 / 3) + rest, 3)
  })

  test.each<[string, Term[]]>([
    ['its readings all stand inside', [reading(inside), reading(inside)]],
    ['only one reading has the factor', [reading(inside), reading()]],
    ['it has no percent part', [reading(inside, 'm', 0), reading(inside, 'm', 0), reading({}, 'm', 0)]],
    ['it has no name', [reading(inside, null), reading(inside, null), reading({}, null)]],
    ['nothing is shared', [reading(), reading()]],
    ['there is one term', [reading(inside)]],
  ])('needs one tree where %s', (_, terms) => {
    expect(conditionedSums(terms)).toHaveLength(1)
  })

  test('is found whichever reading comes first', () => {
    expect(conditionedSums([reading(), reading(inside), reading(inside)])).toHaveLength(8)
  })

  test('between two factors needs the strata of both', () => {
    const other = { shared: { key: 'other', distribution: rectangularSum(1, 0.1) }, factors: [powerFactor] }
    const sums = conditionedSums([reading(inside), reading(inside), reading(other), reading(other)])
    expect(sums).toHaveLength(64)
    expect(sums.reduce((sum, each) => sum + meanOf(each) / 64, 0)).toBeCloseTo(10, 10)
  })
})

describe('the closed form', () => {
  const sumOf = (build: (sum: GrowingSum) => void) => {
    const sum = new GrowingSum()
    sum.constant = 10
    build(sum)
    return closedForm(sum, 0.05, 0.95)
  }

  test('of a constant is the constant', () => {
    expect(sumOf(() => undefined)).toEqual({ low: 10, high: 10 })
  })

  test('of one factor is its quantiles, scaled and moved', () => {
    const found = sumOf((sum) => sum.addProduct(2, [rectangularSum(1, 0.5)]))!
    expect(found.low).toBeCloseTo(10 + 2 * 0.55, 12)
    expect(found.high).toBeCloseTo(10 + 2 * 1.45, 12)
  })

  test('of a factor times a constant is its quantiles', () => {
    const inner = new GrowingSum()
    inner.constant = 4
    const found = sumOf((sum) => sum.addScaled(rectangularSum(1, 0.5), inner))!
    expect(found.low).toBeCloseTo(10 + 4 * 0.55, 12)
    expect(found.high).toBeCloseTo(10 + 4 * 1.45, 12)
  })

  test('is not known of two factors, two parts, or a factor times what is uncertain', () => {
    expect(sumOf((sum) => sum.addProduct(1, [rectangularSum(1, 0.5), powerFactor]))).toBeNull()
    expect(
      sumOf((sum) => {
        sum.addProduct(1, [powerFactor])
        sum.addProduct(1, [powerFactor])
      }),
    ).toBeNull()
    const inner = new GrowingSum()
    inner.addProduct(1, [powerFactor])
    expect(sumOf((sum) => sum.addScaled(rectangularSum(1, 0.5), inner))).toBeNull()
  })
})

describe('small parts of a sum', () => {
  /** Rectangles of the given half-widths about 10. */
  const sumOf = (...halfWidths: readonly number[]) => {
    const sum = new GrowingSum()
    for (const halfWidth of halfWidths) sum.addProduct(1, [rectangularSum(10, halfWidth)])
    return sum
  }

  test('become one rectangle of their mean and variance', () => {
    const sum = sumOf(5, 0.1, 0.2, 0.1)
    const absorbed = absorbSmall(sum, varianceIn(sum))
    expect(absorbed.nodes).toHaveLength(2)
    expect(meanOf(absorbed)).toBeCloseTo(40, 10)
    expect(varianceIn(absorbed)).toBeCloseTo(varianceIn(sum), 10)
  })

  test('stay as they are where one alone is small, or none is', () => {
    expect(absorbSmall(sumOf(5, 0.2), 25 / 3).nodes).toHaveLength(2)
    const large = sumOf(5, 4, 3)
    const kept = absorbSmall(large, varianceIn(large))
    expect(kept.nodes.map(({ variance }) => variance)).toEqual(
      large.nodes.map(({ variance }) => variance).toSorted((a, b) => a - b),
    )
    expect(kept.constant).toBe(0)
  })

  test('together below a millionth of the variance become a constant', () => {
    const sum = sumOf(5, 0.001, 0.002)
    const absorbed = absorbSmall(sum, varianceIn(sum))
    expect([absorbed.constant, absorbed.nodes.length]).toEqual([20, 1])
  })

  test('whose spread is larger than their mean are not cut at zero', () => {
    const sum = new GrowingSum()
    sum.addProduct(1, [rectangularSum(100, 50)])
    for (let i = 0; i < 3; i++) sum.addProduct(0.5, [rectangularSum(0, 3)])
    const absorbed = absorbSmall(sum, varianceIn(sum))
    expect(absorbed.nodes).toHaveLength(2)
    expect(meanOf(absorbed)).toBeCloseTo(meanOf(sum), 10)
    expect(varianceIn(absorbed)).toBeCloseTo(varianceIn(sum), 8)
  })

  test('inside of what is scaled become one, too, also where that is all', () => {
    const inner = sumOf(5, 0.1, 0.2, 0.1)
    const outer = new GrowingSum()
    outer.addScaled(rectangularSum(2, 0.1), inner)
    const [node] = absorbSmall(outer, varianceIn(outer)).nodes
    expect(node?.kind === 'scaled' && node.of.nodes).toHaveLength(2)
    expect(node!.mean).toBeCloseTo(80, 9)
    outer.addProduct(1, [rectangularSum(30, 20)])
    const both = absorbSmall(outer, varianceIn(outer))
    expect(both.nodes.map((one) => (one.kind === 'scaled' ? one.of.nodes.length : 1)).toSorted()).toEqual([
      1, 2,
    ])
  })

  test('are never what is scaled, of which every other part may know', () => {
    const sum = sumOf(50, 40)
    sum.addScaled(rectangularSum(1, 0.001), sumOf(0.01, 0.01))
    sum.addProduct(1, [rectangularSum(1, 0.9)])
    const absorbed = absorbSmall(sum, varianceIn(sum))
    expect(kindsOf(absorbed)).toContain('scaled')
  })
})

import { describe, expect, test } from 'vitest'
import { convolve } from '../../../src/core/quantity/convolve.ts'
import type { Distribution } from '../../../src/core/quantity/distribution.ts'
import { Lattice } from '../../../src/core/quantity/lattice.ts'
import { latticeDistribution } from '../../../src/core/quantity/latticeDistribution.ts'
import { latticeQuantile } from '../../../src/core/quantity/latticeQuantile.ts'
import { mixture } from '../../../src/core/quantity/mixture.ts'
import { nodeAt, nodesOf, productOf } from '../../../src/core/quantity/nodes.ts'
import { normalCdf, normalQuantile } from '../../../src/core/quantity/normal.ts'
import { reachOf } from '../../../src/core/quantity/reach.ts'
import { rectangularSum } from '../../../src/core/quantity/rectangularSum.ts'
import { spread } from '../../../src/core/quantity/spread.ts'
import { spreadOfSum } from '../../../src/core/quantity/spreadOfSum.ts'
import { GrowingSum } from '../../../src/core/quantity/sumNode.ts'
import { triangular } from '../../../src/core/quantity/triangular.ts'
import { twoPieceLognormal } from '../../../src/core/quantity/twoPieceLognormal.ts'

const latticeOf = (start: number, masses: readonly number[], smear = 0): Lattice => {
  const lattice = new Lattice()
  lattice.clear(start, masses.length)
  masses.forEach((mass, i) => (lattice.masses[i] = mass))
  lattice.smear = smear
  return lattice
}
const massesOf = ({ masses, length }: Lattice): number[] => [...masses.slice(0, length)]

function momentsOf({ start, length, masses }: Lattice) {
  let [mass, first, second] = [0, 0, 0]
  for (let i = 0; i < length; i++) {
    mass += masses[i]!
    first += masses[i]! * (start + i)
    second += masses[i]! * (start + i) ** 2
  }
  return { mass, mean: first, variance: second - first * first }
}

describe('a lattice', () => {
  test('that is filled again holds nothing of its earlier use, whether it grows or not', () => {
    for (const length of [100, 3, 5000, 4]) {
      const lattice = latticeOf(
        -7,
        Array.from({ length: 200 }, () => 9),
        2,
      )
      lattice.clear(5, length)
      expect([lattice.start, lattice.length, lattice.smear]).toEqual([5, length, 0])
      expect([...lattice.masses.slice(0, length + 3)]).toEqual(Array.from({ length: length + 3 }, () => 0))
    }
  })
})

describe('a convolution', () => {
  const sumOf = (a: Lattice, b: Lattice, reach = 1000) => {
    const into = new Lattice()
    convolve(a, b, reach, into)
    return into
  }

  test.each([1, 2, 3, 4, 5, 6, 7, 8, 9])('of eleven points with %i is the sum of all pairs', (count) => {
    const a = Array.from({ length: 11 }, (_, i) => (i + 1) / 66)
    const b = Array.from({ length: count }, (_, i) => (2 * i + 1) / count ** 2)
    const wanted = Array.from({ length: 10 + count }, () => 0)
    a.forEach((x, i) => b.forEach((y, j) => (wanted[i + j]! += x * y)))
    for (const sum of [sumOf(latticeOf(3, a), latticeOf(-5, b)), sumOf(latticeOf(-5, b), latticeOf(3, a))]) {
      expect(sum.start).toBe(-2)
      expect(sum.length).toBe(10 + count)
      massesOf(sum).forEach((mass, i) => expect(mass).toBeCloseTo(wanted[i]!, 15))
    }
  })

  test('adds what both lattices added to the variance', () => {
    expect(sumOf(latticeOf(0, [1], 0.25), latticeOf(0, [1], 0.5)).smear).toBe(0.75)
  })

  test('leaves out what lies above its reach, and nothing else', () => {
    const half = [0.5, 0.5]
    expect(massesOf(sumOf(latticeOf(0, half), latticeOf(0, half), 2))).toEqual([0.25, 0.5])
    expect(massesOf(sumOf(latticeOf(0, half), latticeOf(0, half), 1))).toEqual([0.25])
  })

  test('puts what is negligible at an end on the next point', () => {
    const sum = sumOf(latticeOf(0, [4e-7, 5e-7, 0.5, 0.4999986, 3e-7, 2e-7]), latticeOf(0, [1]))
    expect(sum.start).toBe(2)
    expect(massesOf(sum)).toEqual([0.5 + (4e-7 + 5e-7), expect.closeTo(0.4999991, 12)])
    expect([...sum.masses.slice(2, 5)]).toEqual([0, 0, 0])
  })

  test('keeps a last point however negligible', () => {
    expect(massesOf(sumOf(latticeOf(4, [1e-9, 2e-9]), latticeOf(0, [1])))).toEqual([expect.closeTo(3e-9, 20)])
  })
})

describe('the quantile of a lattice', () => {
  test('of a smooth density is that of the density, whatever the step', () => {
    for (const step of [0.05, 0.2, 0.5]) {
      const into = new Lattice()
      spread(triangular({ low: 0, typical: 4, high: 9 }), nodeAt(1), step, 10_000, into)
      for (const p of [0.05, 0.5, 0.95]) {
        const wanted = triangular({ low: 0, typical: 4, high: 9 }).quantile(p)
        expect(Math.abs(latticeQuantile(into, p)! * step - wanted)).toBeLessThan(0.02 * step)
      }
    }
  })

  test('of a normal density is right to some thousandths of its spread with four steps for each', () => {
    const masses = Array.from({ length: 81 }, (_, i) => {
      const z = (i - 40) / 4
      return normalCdf(z + 0.125) - normalCdf(z - 0.125)
    })
    // Masses of whole cells are a rectangle's smear of 1/12 of a step squared.
    const lattice = latticeOf(-40, masses, 1 / 12)
    for (const p of [0.005, 0.05, 0.25, 0.5, 0.75, 0.95, 0.995])
      expect(Math.abs(latticeQuantile(lattice, p)! / 4 - normalQuantile(p))).toBeLessThan(0.004)
  })

  test('is unknown above what a cut-off lattice holds', () => {
    expect(latticeQuantile(latticeOf(0, [0.3, 0.3]), 0.9)).toBeNull()
    expect(latticeQuantile(latticeOf(0, [0.3, 0.3]), 0.2)).not.toBeNull()
  })

  test('ascends with the probability, also where correction would make it fall', () => {
    const lattice = latticeOf(0, [0.4, 0, 0, 0.3, 0, 0.3], 0.9)
    let before = -Infinity
    for (let p = 0.005; p < 0.97; p += 0.005) {
      const at = latticeQuantile(lattice, p)!
      expect(at).toBeGreaterThanOrEqual(before)
      before = at
    }
  })
})

describe('a distribution that is put onto a lattice', () => {
  const kinds: readonly [string, Distribution][] = [
    ['a draw', twoPieceLognormal({ low: 0.5, typical: 1, high: 1.6 })],
    ['a trapezoid', rectangularSum(2, 0.5, 0.2)],
    ['a triangle', triangular({ low: 0.2, typical: 0.3, high: 2 })],
  ]
  test.each(kinds)('keeps its probability and mean, and grows by its smear alone: %s', (_, x) => {
    for (const [scale, step] of [
      [1, 0.02],
      [3, 0.05],
      [1, 3],
      [0.5, 0.4],
    ] as const) {
      const into = new Lattice()
      spread(x, nodeAt(scale), step, 1e6, into)
      const { mass, mean, variance } = momentsOf(into)
      expect(mass).toBeCloseTo(1, 9)
      expect(mean * step).toBeCloseTo(scale * x.mean, 4)
      const own = (scale / step) ** 2 * (x.meanSquare - x.mean ** 2)
      expect(Math.abs(variance - own - into.smear)).toBeLessThan(0.02 + 1e-4 * own)
    }
  })

  test('keeps probability and mean where it is cut at zero', () => {
    const x = rectangularSum(0.1, 0.5, 0.2)
    for (const step of [0.02, 0.3, 3]) {
      const into = new Lattice()
      spread(x, nodeAt(1), step, 1e6, into)
      const { mass, mean } = momentsOf(into)
      expect([into.start, mass, mean * step]).toEqual([0, expect.closeTo(1, 12), expect.closeTo(x.mean, 12)])
    }
  })

  test('times several values is their mixture', () => {
    const x = rectangularSum(2, 0.5)
    const mixed = new Lattice()
    const values = Float64Array.of(1, 0.5, 0, 2)
    const weights = Float64Array.of(0.25, 0.5, 0.25, 0)
    spread(x, { values, weights, count: 4 }, 0.01, 1000, mixed)
    const { mass, mean } = momentsOf(mixed)
    expect(mass).toBeCloseTo(1, 12)
    expect(mean * 0.01).toBeCloseTo(0.25 * 2 + 0.5 * 1, 9)
    expect(mixed.start).toBe(0)
    expect(mixed.masses[0]).toBeCloseTo(0.25, 12)
  })

  test('is cut off at its reach', () => {
    const into = new Lattice()
    spread(rectangularSum(2, 0.5), nodeAt(1), 0.01, 10, into)
    expect(into.length).toBe(10)
    spread(
      rectangularSum(2, 0.5),
      { values: Float64Array.of(1, 5), weights: Float64Array.of(0.5, 0.5), count: 2 },
      0.01,
      10,
      into,
    )
    expect(momentsOf(into).mass).toBeLessThan(0.1)
  })
})

describe('a factor as a few values', () => {
  const x = triangular({ low: 1, typical: 1.2, high: 2 })

  test.each([
    [0.05, 3],
    [0.2, 5],
    [0.9, 12],
  ])('with a spread of %d of the widest takes %i, whose mean is exact', (ratio, count) => {
    const { values, weights, count: found } = nodesOf(x, ratio, 2)
    expect([values.length, weights.length, found]).toEqual([count, count, count])
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 13)
    expect(values.reduce((sum, value, i) => sum + value * weights[i]!, 0)).toBeCloseTo(2 * x.mean, 13)
  })

  test('has Gauss and Legendre’s points', () => {
    // Three points on 0..1: 1/2 and 1/2 +- sqrt(15)/10, with weights 4/9 and 5/18.
    const { values, weights } = nodesOf(rectangularSum(0.5, 0.5), 0, 1)
    ;[0.5 - Math.sqrt(15) / 10, 0.5, 0.5 + Math.sqrt(15) / 10].forEach((point, i) =>
      expect(values[i]).toBeCloseTo(point, 14),
    )
    ;[5 / 18, 4 / 9, 5 / 18].forEach((weight, i) => expect(weights[i]).toBeCloseTo(weight, 14))
  })

  test('and another are all products, gathered where they are many without moving the mean', () => {
    const few = productOf(nodesOf(x, 0.05, 1), nodesOf(x, 0.2, 1))
    expect(few.count).toBe(15)
    const many = productOf(nodesOf(x, 0.9, 1), nodesOf(x, 0.2, 1))
    expect(many.count).toBe(33)
    for (const { values, weights } of [few, many]) {
      expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12)
      expect(values.reduce((sum, value, i) => sum + value * weights[i]!, 0)).toBeCloseTo(x.mean ** 2, 12)
      expect(Math.min(...values)).toBeGreaterThan(1)
      expect(Math.max(...values)).toBeLessThan(4)
    }
  })
})

describe('a sum on a lattice', () => {
  const sumOf = (...products: readonly (readonly Distribution[])[]) => {
    const sum = new GrowingSum()
    for (const factors of products) sum.addProduct(1, factors)
    return sum
  }

  test('has the mean of its parts, products and scaled sums alike', () => {
    const inner = sumOf([rectangularSum(1, 0.2)], [triangular({ low: 0, typical: 1, high: 2 })])
    inner.constant = 3
    const sum = sumOf([rectangularSum(2, 0.5), triangular({ low: 1, typical: 2, high: 4 })])
    sum.addScaled(rectangularSum(1, 0.06), inner)
    const lattice = spreadOfSum(sum, 0.05, 1e4)
    const { mass, mean } = momentsOf(lattice)
    expect(mass).toBeCloseTo(1, 9)
    expect(mean * 0.05).toBeCloseTo((2 * 7) / 3 + 5, 3)
  })

  test('scales what would be below zero as zero', () => {
    const inner = sumOf([rectangularSum(1, 1)])
    inner.constant = -0.5
    const sum = new GrowingSum()
    sum.addScaled(rectangularSum(1, 0.5), inner)
    const lattice = spreadOfSum(sum, 0.01, 1e4)
    expect(lattice.start).toBeGreaterThanOrEqual(0)
    expect(momentsOf(lattice).mean * 0.01).toBeCloseTo(0.5625, 2)
  })
})

test('equal parts of sums stand side by side, each at its own constant', () => {
  const sums = [0, 10.25].map((constant) => {
    const sum = new GrowingSum()
    sum.constant = constant
    sum.addProduct(1, [rectangularSum(1, 0.5)])
    return sum
  })
  const all = mixture(sums, 0.1, 1000)
  const { mass, mean } = momentsOf(all)
  expect(mass).toBeCloseTo(1, 12)
  expect(mean * 0.1).toBeCloseTo(1 + 10.25 / 2, 9)
  // A quarter lies in the lower half of the first part.
  expect(latticeQuantile(all, 0.25)! * 0.1).toBeCloseTo(1, 2)
  expect(latticeQuantile(all, 0.75)! * 0.1).toBeCloseTo(11.25, 2)
})

describe('a lattice as a distribution', () => {
  test('is moved so that its mean is exact, and pulled together to its variance', () => {
    const lattice = latticeOf(0, [0.25, 0.5, 0.25], 0.25)
    const x = latticeDistribution(lattice, 1, 1.1, 1.1 ** 2 + 0.25)
    expect([x.mean, x.meanSquare]).toEqual([1.1, 1.1 ** 2 + 0.25])
    // A variance of 1/2, of which 1/4 is smear: points at 1.1 +- sqrt(1/2).
    expect(x.min).toBeCloseTo(1.1 - Math.SQRT1_2, 12)
    expect(x.max).toBeCloseTo(1.1 + Math.SQRT1_2, 12)
    expect(x.cdf(1.1)).toBe(0.75)
    expect(x.cdfIntegral(5)).toBeCloseTo(5 - 1.1, 12)
    expect(x.quantile(0.5)).toBeCloseTo(1.1, 12)
  })

  test('that was cut off keeps its mean by one far value', () => {
    const x = latticeDistribution(latticeOf(0, [0.5, 0.4]), 1, 1.4, 20)
    // 0.4 of probability-weighted value is held; the tenth that is missing has to hold 1.
    expect(x.max).toBeCloseTo(10, 12)
    expect([x.cdf(9.99), x.cdf(10.01)]).toEqual([0.9, 1])
    expect(x.cdfIntegral(20)).toBeCloseTo(20 - 1.4, 12)
    expect(x.quantile(0.95)).toBeCloseTo(10, 12)
  })

  test('never puts the far value among the points that it holds', () => {
    const x = latticeDistribution(latticeOf(0, [0.5, 0.4]), 1, 0.41, 20)
    expect(x.max).toBe(2)
  })

  test('has its last point as the quantile of what rounding took', () => {
    const x = latticeDistribution(latticeOf(0, [0.5, 0.5 - 1e-12]), 1, 0.5, 0.5)
    expect(x.quantile(1)).toBeCloseTo(1.5, 1)
    expect(x.max).toBeCloseTo(1, 1)
  })

  test('has no quantile below zero', () => {
    expect(latticeDistribution(latticeOf(0, [0.5, 0.5]), 1, 0.5, 0.5).quantile(0.01)).toBe(0)
  })
})

describe('where a sum roughly lies', () => {
  test('adds middles, and distances from them in squares', () => {
    const sum = new GrowingSum()
    sum.constant = 7
    sum.addProduct(2, [rectangularSum(3, 1)])
    sum.addProduct(1, [rectangularSum(4, 2)])
    const { middle, below, above } = reachOf(sum, 0, 1)
    expect(middle).toBeCloseTo(7 + 6 + 4, 12)
    expect(below).toBeCloseTo(Math.hypot(2, 2), 12)
    expect(above).toBeCloseTo(Math.hypot(2, 2), 12)
  })

  test('takes the mean where the median is a reading cut to zero', () => {
    const sum = new GrowingSum()
    sum.addProduct(1, [rectangularSum(0, 0.3)])
    const { middle, above } = reachOf(sum, 0.05, 0.95)
    expect(middle).toBeGreaterThan(0)
    expect(above).toBeGreaterThan(0)
  })
})

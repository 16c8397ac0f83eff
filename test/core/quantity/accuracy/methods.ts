import { type Distribution, variance } from '../../../../src/core/quantity/distribution.ts'
import { type Interval, intervalOfSum } from '../../../../src/core/quantity/intervalOfSum.ts'
import { monteCarloInterval } from '../../../../src/core/quantity/monteCarlo.ts'
import { normalQuantile } from '../../../../src/core/quantity/normal.ts'
import { type Term, termMean } from '../../../../src/core/quantity/term.ts'
import { varianceOfSum } from '../../../../src/core/quantity/varianceOfSum.ts'
import { drawnIntervals, type Errors, errorsOf } from './comparison.ts'
import { randomRecipe } from './randomRecipe.ts'
import { distributionOf, type Recipe, termsOf } from './recipe.ts'

/**
 * Prints the table of README.md in core/quantity: ways to make an interval, each with its errors against the oracle on so
 * many random households, and the households of twenty devices that it does a second, taken in turns in one run.
 */
type Method = (terms: readonly Term[], coverage: number, outer?: Distribution) => Interval

const METHODS: Record<string, Method> = {
  'lattice convolution (this folder)': intervalOfSum,
  'normal of the same mean and variance': (terms, coverage, outer) => {
    const { mean, spread } = momentsOf(terms, outer)
    const score = normalQuantile((1 + coverage) / 2)
    return { expected: mean, low: mean - score * spread, high: mean + score * spread }
  },
  'log-normal of the same mean and variance': (terms, coverage, outer) => {
    const { mean, spread } = momentsOf(terms, outer)
    const square = Math.log1p((spread / mean) ** 2)
    const score = normalQuantile((1 + coverage) / 2) * Math.sqrt(square)
    const median = mean * Math.exp(-square / 2)
    return { expected: mean, low: median * Math.exp(-score), high: median * Math.exp(score) }
  },
  'root sum of squares of each part’s own ends': (terms, coverage, outer) => {
    const parts = terms.map((term) => intervalOfSum([term], coverage))
    const expected = parts.reduce((sum, part) => sum + part.expected, 0)
    const scale = outer ? intervalOfOuter(outer, coverage) : { expected: 1, low: 1, high: 1 }
    const side = (end: 'low' | 'high') =>
      Math.hypot(...parts.map((part) => part[end] - part.expected), expected * (scale[end] - 1))
    return { expected, low: expected - side('low'), high: expected + side('high') }
  },
  'sum of all low ends, sum of all high ends': (terms, coverage, outer) => {
    const parts = terms.map((term) => intervalOfSum([term], coverage))
    const scale = outer ? intervalOfOuter(outer, coverage) : { expected: 1, low: 1, high: 1 }
    const sum = (end: keyof Interval) => scale[end] * parts.reduce((all, part) => all + part[end], 0)
    return { expected: sum('expected'), low: sum('low'), high: sum('high') }
  },
  'Monte Carlo, 10^4 draws': (terms, coverage, outer) => monteCarloInterval(terms, coverage, 1e4, 1, outer),
  'Monte Carlo, 10^5 draws': (terms, coverage, outer) => monteCarloInterval(terms, coverage, 1e5, 1, outer),
}

const intervalOfOuter = (outer: Distribution, coverage: number): Interval => ({
  expected: outer.mean,
  low: outer.quantile((1 - coverage) / 2),
  high: outer.quantile((1 + coverage) / 2),
})

/** Mean and standard deviation of outer x (sum of terms), with all that the terms share. */
function momentsOf(terms: readonly Term[], outer?: Distribution): { mean: number; spread: number } {
  const mean = terms.reduce((sum, term) => sum + termMean(term), 0)
  const { total } = varianceOfSum(terms)
  if (!outer) return { mean, spread: Math.sqrt(total) }
  const square = total * outer.meanSquare + mean * mean * variance(outer)
  return { mean: mean * outer.mean, spread: Math.sqrt(square) }
}

/** Errors of every method for the total and the first device of one household, drawn once for all. */
function errorsOn(recipe: Recipe, seed: number): Map<string, Errors[]> {
  const wanted = drawnIntervals(recipe, seed)
  const { devices, coverage, voltageHalfWidth } = recipe
  const outer = recipe.outer ? distributionOf(recipe.outer) : undefined
  const terms = {
    total: termsOf(devices.flat(), voltageHalfWidth),
    first: termsOf(devices[0]!, voltageHalfWidth),
  }
  return new Map(
    Object.entries(METHODS).map(([name, method]) => [
      name,
      [
        errorsOf(method(terms.total, coverage, outer), wanted.total),
        errorsOf(method(terms.first, coverage), wanted.first),
      ],
    ]),
  )
}

const SPEED_DEVICES = 20
const SPEED_HOUSEHOLDS = 50
const ROUNDS = 5
const MILLISECONDS = 400

/** Households a second: the interval of every device and of the total; all methods in turn, the median of the rounds. */
function measureRates(): Map<string, number> {
  const households = Array.from({ length: SPEED_HOUSEHOLDS }, (_, index) => {
    const { devices, voltageHalfWidth } = randomRecipe(index, SPEED_DEVICES)
    const each = devices.map((products) => termsOf(products, voltageHalfWidth))
    return [...each, each.flat()]
  })
  const rates = new Map(Object.keys(METHODS).map((name) => [name, [] as number[]]))
  for (let round = 0; round < ROUNDS; round++)
    for (const [name, method] of Object.entries(METHODS)) {
      let done = 0
      const start = performance.now()
      while (performance.now() - start < MILLISECONDS)
        for (const terms of households[done++ % SPEED_HOUSEHOLDS]!) method(terms, 0.9)
      rates.get(name)!.push((done / (performance.now() - start)) * 1000)
    }
  return new Map(
    [...rates].map(([name, each]) => [name, each.sort((a, b) => a - b)[Math.floor(ROUNDS / 2)]!]),
  )
}

const households = Number(process.argv[2] ?? 60)
const errors = new Map(Object.keys(METHODS).map((name) => [name, [] as Errors[]]))
for (let index = 0; index < households; index++)
  for (const [name, found] of errorsOn(randomRecipe(index), index)) errors.get(name)!.push(...found)
const rates = measureRates()

const percent = (share: number) => `${Number((100 * share).toPrecision(2))} %`
process.stdout.write('| method | median | 99th percentile | worst | mean, worst | a second |\n')
for (const [name, found] of errors) {
  const ends = found.map(({ low, high }) => Math.max(low, high)).sort((a, b) => a - b)
  const at = (p: number) => percent(ends[Math.ceil(p * ends.length) - 1]!)
  const mean = percent(Math.max(...found.map((one) => one.mean)))
  const columns = [name, at(0.5), at(0.99), at(1), mean, String(Number(rates.get(name)!.toPrecision(2)))]
  process.stdout.write(`| ${columns.join(' | ')} |\n`)
}

import type { Distribution } from '../../../src/core/quantity/distribution.ts'
import { TAIL } from '../../../src/core/quantity/distribution.ts'
import { normalCdf, normalQuantile } from '../../../src/core/quantity/normal.ts'

const density = (z: number) => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)

/**
 * A normal quantity in the form that the core takes; the service itself has none, since its quantities cannot be
 * negative. For means of many standard deviations.
 */
export function normalDistribution(mean: number, deviation: number): Distribution {
  const reach = deviation * normalQuantile(1 - TAIL)
  const score = (x: number) => (x - mean) / deviation
  return {
    mean,
    meanSquare: mean * mean + deviation * deviation,
    min: mean - reach,
    max: mean + reach,
    cdf: (x) => normalCdf(score(x)),
    cdfIntegral: (x) => (x - mean) * normalCdf(score(x)) + deviation * density(score(x)),
    quantile: (p) => mean + deviation * normalQuantile(p),
  }
}

/**
 * The square of a normal quantity, which the core can take as one factor.
 *
 *   P(X^2 <= y) = P(-sqrt y <= X <= sqrt y),   E[X^2] = m^2 + s^2,   E[X^4] = m^4 + 6 m^2 s^2 + 3 s^4
 */
export function squaredNormal(mean: number, deviation: number): Distribution {
  const from = (x: number) => (-x - mean) / deviation
  const to = (x: number) => (x - mean) / deviation
  const cdf = (y: number) => (y <= 0 ? 0 : normalCdf(to(Math.sqrt(y))) - normalCdf(from(Math.sqrt(y))))
  /** E[X^2; |X| <= x] */
  function partialSquare(x: number): number {
    const [a, b] = [from(x), to(x)]
    const within = normalCdf(b) - normalCdf(a)
    const first = density(a) - density(b)
    const second = within + a * density(a) - b * density(b)
    return mean * mean * within + 2 * mean * deviation * first + deviation * deviation * second
  }
  const square = mean * mean + deviation * deviation
  return {
    mean: square,
    meanSquare: mean ** 4 + 6 * mean ** 2 * deviation ** 2 + 3 * deviation ** 4,
    min: 0,
    max: (mean + deviation * normalQuantile(1 - TAIL / 2)) ** 2,
    cdf,
    cdfIntegral: (y) => (y <= 0 ? 0 : y * cdf(y) - partialSquare(Math.sqrt(y))),
    quantile: (p) => bisected(cdf, p, (mean + 10 * deviation) ** 2),
  }
}

function bisected(cdf: (x: number) => number, p: number, highest: number): number {
  let [low, high] = [0, highest]
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (cdf(middle) < p) low = middle
    else high = middle
  }
  return (low + high) / 2
}

import type { Distribution } from '../quantity/distribution.ts'

export interface Part {
  readonly probability: number
  readonly of: Distribution
}

const HALVINGS = 60

/** One of several quantities, each with its probability; the probabilities add up to 1. */
export function mixture(parts: readonly Part[]): Distribution {
  const [only] = parts
  if (parts.length === 1) return only!.of
  const mean = (value: (of: Distribution) => number) =>
    parts.reduce((sum, { probability, of }) => sum + probability * value(of), 0)
  const cdf = (x: number) => mean((of) => of.cdf(x))
  return {
    mean: mean((of) => of.mean),
    meanSquare: mean((of) => of.meanSquare),
    min: Math.min(...parts.map(({ of }) => of.min)),
    max: Math.max(...parts.map(({ of }) => of.max)),
    cdf,
    cdfIntegral: (x) => mean((of) => of.cdfIntegral(x)),
    quantile: (p) => {
      let low = Math.min(...parts.map(({ of }) => of.quantile(p)))
      let high = Math.max(...parts.map(({ of }) => of.quantile(p)))
      if (cdf(low) >= p) return low
      for (let i = 0; i < HALVINGS && low < high; i++) {
        const middle = (low + high) / 2
        if (cdf(middle) < p) low = middle
        else high = middle
      }
      return high
    },
  }
}

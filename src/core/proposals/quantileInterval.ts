import { binomialCdf } from './binomialCdf.ts'

/** Places in the ascending sample between which a quantile of the population lies; null where the sample is too small to say. */
export interface RankInterval {
  /** 1 is the smallest value. */
  readonly lower: number | null
  readonly upper: number | null
  /** How probable it is that the quantile lies between them, at least; exact for a continuous distribution. */
  readonly coverage: number
}

/**
 * The interval of a population's quantile between two order statistics of a sample, whatever the distribution is.
 *
 *   P(X(r) <= Q) = P(B >= r),   P(X(s) < Q) = P(B >= s),   B binomial with n and p
 *
 * r is the largest rank with P(B < r) <= (1 - c)/2 and s the smallest with P(B >= s) <= (1 - c)/2. A few values leave ends open: the
 * 5th percentile has a lower end from 59 values on, where 0.95^59 < 0.05. It supposes values that are independent of each other.
 * Source: H. A. David and H. N. Nagaraja, Order Statistics, 3rd ed. 2003, 7.1; W. J. Conover, Practical Nonparametric Statistics,
 * 3rd ed. 1999, 3.2 (both from memory); the tests hold it against the incomplete beta function of Cephes and S. S. Wilks' 59.
 */
export function quantileInterval(n: number, p: number, coverageProbability: number): RankInterval {
  const tail = (1 - coverageProbability) / 2
  const cdf = binomialCdf(n, p)
  let lower = 0
  while (lower < n && cdf[lower]! <= tail) lower++
  let upper = 1
  while (upper <= n && 1 - cdf[upper - 1]! > tail) upper++
  return {
    lower: lower === 0 ? null : lower,
    upper: upper > n ? null : upper,
    coverage: (upper > n ? 1 : cdf[upper - 1]!) - (lower === 0 ? 0 : cdf[lower - 1]!),
  }
}

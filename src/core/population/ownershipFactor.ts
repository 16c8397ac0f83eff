import type { Range } from '../catalogue/category.ts'
import type { Distribution } from '../quantity/distribution.ts'
import { triangular } from '../quantity/triangular.ts'
import type { Cumulants } from './cumulants.ts'

/** Mean of a triangular distribution: what one home's probability of having a device is. */
export const meanOwnership = ({ low, typical, high }: Range) => (low + typical + high) / 3

/** Variance relative to the square of the mean. */
export const relativeVariance = (range: Range) =>
  ((range.low - range.typical) ** 2 + (range.typical - range.high) ** 2 + (range.high - range.low) ** 2) /
  (36 * meanOwnership(range) ** 2)

/**
 * What not knowing the ownership does to the sum over H homes: a factor of mean 1.
 *
 *   1 + q (o/E[o] - 1),   q^2 = (1 - 1/H)/(1 + v/(H m^2))       m, v mean and variance of one home at E[o]
 *
 * One home has the device or not, with the probability E[o]; that the probability itself is uncertain does not show there,
 * so q = 0. With many homes q is 1. In between q makes the variance of the sum what the law of total variance says:
 * H v + H (H - 1) (m/E[o])^2 V(o).
 */
export function ownershipFactor(range: Range, homes: number, home: Cumulants): Distribution {
  return triangular(movedRange(range, homes, home))
}

function movedRange(range: Range, homes: number, { mean, variance }: Cumulants): Range {
  const center = meanOwnership(range)
  const part = Math.sqrt((1 - 1 / homes) / (1 + variance / (homes * mean ** 2)))
  const moved = (ownership: number) => 1 + part * (ownership / center - 1)
  const [low, high] = [moved(range.low), moved(range.high)]
  // From the other two, so that the mean is 1 to the last bit.
  return { low, typical: Math.min(high, Math.max(low, 3 - low - high)), high }
}

export const ownershipVariance = (range: Range, homes: number, home: Cumulants): number =>
  relativeVariance(movedRange(range, homes, home))

import { variance } from './distribution.ts'
import { type Term, termMean, termVariance } from './term.ts'

export interface VarianceOfSum {
  readonly total: number
  /** For each term, by how much the total's variance would fall if the term became a constant. */
  readonly removedBy: readonly number[]
}

/**
 * Variance of a sum of terms, with the covariance of those that share a meter's gain or a shared factor
 * (JCGM 100:2008 (GUM) 5.2.2): every pair that shares a factor of mean 1 and variance d has the covariance
 * d x mean x mean. Exact but for a reading that its counts part may push below zero, where the gain's part is an
 * upper bound, and for a pair that shares both, where the product of the two variances is left out.
 */
export function varianceOfSum(terms: readonly Term[]): VarianceOfSum {
  const means = terms.map(termMean)
  const removedBy = terms.map(termVariance)
  let total = removedBy.reduce((sum, own) => sum + own, 0)
  for (const { members, variance: common } of sharingGroups(terms)) {
    const sum = members.reduce((all, index) => all + means[index]!, 0)
    for (const index of members) {
      const withOthers = common * means[index]! * (sum - means[index]!)
      total += withOthers
      removedBy[index]! += 2 * withOthers
    }
  }
  return { total, removedBy }
}

interface SharingGroup {
  readonly members: number[]
  readonly variance: number
}

function sharingGroups(terms: readonly Term[]): Iterable<SharingGroup> {
  const groups = new Map<string, SharingGroup>()
  const join = (key: string, index: number, varianceOf: () => number) => {
    const group = groups.get(key) ?? { members: [], variance: varianceOf() }
    group.members.push(index)
    groups.set(key, group)
  }
  terms.forEach(({ metered, shared }, index) => {
    if (metered?.meter && metered.gain > 0) join(`meter ${metered.meter}`, index, () => metered.gain ** 2 / 3)
    if (shared) join(`shared ${shared.key}`, index, () => variance(shared.distribution))
  })
  return groups.values()
}

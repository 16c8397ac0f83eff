import { exact } from '../quantity/exact.ts'
import { rectangularSum } from '../quantity/rectangularSum.ts'
import type { Term } from '../quantity/term.ts'
import type { Cumulants } from './cumulants.ts'
import { ownershipFactor, ownershipVariance, relativeVariance } from './ownershipFactor.ts'
import type { ResolvedItem } from './resolveStock.ts'
import { homeCumulants, modelOf, sumOverHomes } from './sumOverHomes.ts'

/** What the items of a stock come to in a number of homes, kWh/yr. */
export interface RungTerms {
  readonly terms: readonly Term[]
  readonly variance: number
  /** A hundredth of the standard deviation: what differs by less does not show. */
  readonly resolution: number
  /** The part of the variance that is common to all homes. */
  readonly sharedVariance: number
  /** Whether single devices still show in the shape of the sum. */
  readonly isGranular: boolean
}

const STEPS_IN_DEVIATION = 100
/** Up to this share of the variance not even the width of a part shows in an interval. */
const NO_SHARE = 1e-6
/** With so many homes that have the device a sum is smooth. */
const SMOOTH = 60

interface Part {
  readonly item: ResolvedItem
  readonly home: Cumulants
  readonly variance: number
  readonly betweenHomes: number
  readonly shared: number
}

/** Each item as a product of what varies between homes and what all homes share. */
export function rungTerms(items: readonly ResolvedItem[], homes: number): RungTerms {
  const parts = items.flatMap((item) => partOf(item, homes))
  const variance = parts.reduce((sum, part) => sum + part.variance, 0)
  const resolution = Math.sqrt(variance) / STEPS_IN_DEVIATION
  const granularity = parts.reduce(
    (sum, { item, betweenHomes }) => sum + betweenHomes / variance / (homes * modelOf(item).ownership),
    0,
  )
  return {
    terms: parts.map((part) => termOf(part, homes, resolution)),
    variance,
    resolution,
    sharedVariance: parts.reduce((sum, { shared }) => sum + shared, 0),
    isGranular: granularity > 1 / SMOOTH,
  }
}

/** Nothing where no home has the device, or it uses nothing. */
function partOf(item: ResolvedItem, homes: number): Part[] {
  const home = homeCumulants(modelOf(item))
  if (home.mean === 0) return []
  const { ownership, meanDrawUncertainty: u } = item
  const square = (homes * home.mean) ** 2
  const spread = 1 + home.variance / (homes * home.mean ** 2)
  const factors = (1 + ownershipVariance(ownership, homes, home)) * (1 + (u * u) / 3)
  return [
    {
      item,
      home,
      variance: square * (spread * factors - 1),
      betweenHomes: homes * home.variance,
      shared: square * ((1 + relativeVariance(ownership)) * (1 + (u * u) / 3) - 1),
    },
  ]
}

function termOf({ item, home, variance, betweenHomes }: Part, homes: number, resolution: number): Term {
  const spreadShows = betweenHomes > NO_SHARE * variance
  return {
    coefficient: 1,
    factors: [
      spreadShows ? sumOverHomes(modelOf(item), homes, resolution) : exact(homes * home.mean),
      ownershipFactor(item.ownership, homes, home),
      rectangularSum(1, item.meanDrawUncertainty),
    ],
  }
}

import type { Distribution } from '../quantity/distribution.ts'
import { exact } from '../quantity/exact.ts'
import { independentCopies } from '../quantity/independentCopies.ts'
import { copiesOnLattice } from './copiesOnLattice.ts'
import { type Cumulants, cumulantsOf, momentsOf, timesCumulants } from './cumulants.ts'
import type { DeviceEnergy } from './deviceEnergy.ts'
import { matchedLognormal } from './matchedLognormal.ts'
import { mixture, type Part } from './mixture.ts'
import { meanOwnership } from './ownershipFactor.ts'
import { ownersInGroup } from './ownersInGroup.ts'
import type { ResolvedItem } from './resolveStock.ts'

/** One kind of device in a home that is not known further. */
export interface HomeModel {
  readonly device: DeviceEnergy
  /** Probability that the home has any, 0 to 1. */
  readonly ownership: number
  /** Mean number of devices in a home that has any. */
  readonly countPerOwner: number
}

/** A kind of device of a stock as one home has it. */
export const modelOf = ({ device, ownership, countPerOwner }: ResolvedItem): HomeModel => ({
  device,
  ownership: meanOwnership(ownership),
  countPerOwner,
})

/** From so many homes with the device on, three moments say as much as the whole distribution. */
const MANY_OWNERS = 20
/** Rarer devices are summed over groups of homes; see ownersInGroup.ts. */
const LEAST_OWNERSHIP = 0.1

/**
 * The sum over `homes` independent homes, each of which has the device with the probability `ownership`.
 *
 * One home, and few homes with the device: the whole distribution. Otherwise one of the same mean, variance and skewness.
 * @param resolution largest step of a lattice that still shows in what the sum is for
 */
export function sumOverHomes(model: HomeModel, homes: number, resolution: number): Distribution {
  const whole = timesCumulants(homeCumulants(model), homes)
  if (whole.mean === 0 || whole.variance <= whole.mean ** 2 * 1e-30) return exact(whole.mean)
  if (homes === 1) return homeDistribution(model)
  if (homes * model.ownership >= MANY_OWNERS) return matchedLognormal(whole)
  const [part, count] =
    model.ownership >= LEAST_OWNERSHIP ? [homeDistribution(model), homes] : groupOf(model, homes)
  return copiesOnLattice(part, count, resolution)
}

function groupOf(model: HomeModel, homes: number): [Distribution, number] {
  const { groups, probabilities } = ownersInGroup(model.ownership, homes)
  const owner = homeDistribution({ ...model, ownership: 1 })
  const parts = probabilities.map((probability, owners) => ({
    probability,
    of: owners === 0 ? exact(0) : independentCopies(owner, owners),
  }))
  return [mixture(parts.filter(({ probability }) => probability > 0)), groups]
}

/** Whole numbers next to the mean count, so that the number varies as little as its mean allows. */
function counts(mean: number): readonly (readonly [count: number, probability: number])[] {
  const below = Math.floor(mean)
  const rest = mean - below
  return rest === 0
    ? [[below, 1]]
    : [
        [below, 1 - rest],
        [below + 1, rest],
      ]
}

/** Mean, variance and skewness of one home. */
export function homeCumulants({ device, ownership, countPerOwner }: HomeModel): Cumulants {
  const sums = [0, 0, 0]
  for (const [count, probability] of counts(countPerOwner))
    momentsOf(timesCumulants(device.cumulants, count)).forEach(
      (moment, i) => (sums[i]! += ownership * probability * moment),
    )
  return cumulantsOf([sums[0]!, sums[1]!, sums[2]!])
}

function homeDistribution({ device, ownership, countPerOwner }: HomeModel): Distribution {
  const parts: Part[] = counts(countPerOwner).map(([count, probability]) => ({
    probability: ownership * probability,
    of: independentCopies(device.distribution, count),
  }))
  return mixture(ownership < 1 ? [{ probability: 1 - ownership, of: exact(0) }, ...parts] : parts)
}

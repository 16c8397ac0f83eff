import type { Distribution } from '../quantity/distribution.ts'
import { exact } from '../quantity/exact.ts'
import { independentCopies } from '../quantity/independentCopies.ts'
import { type Cumulants, cumulantsOf, momentsOf, timesCumulants } from './cumulants.ts'
import type { DeviceEnergy } from './deviceEnergy.ts'
import { matchedLognormal } from './matchedLognormal.ts'
import { mixture, type Part } from './mixture.ts'

/** One kind of device in a home that is not known further. */
export interface HomeModel {
  readonly device: DeviceEnergy
  /** Probability that the home has any, 0 to 1. */
  readonly ownership: number
  /** Mean number of devices in a home that has any. */
  readonly countPerOwner: number
}

/** From so many homes with the device on, three moments say as much as the whole distribution. */
const MANY_OWNERS = 20
/** Rarer devices are summed in groups of homes, so that the sum has no more steps than it needs. */
const LEAST_OWNERSHIP = 0.02

/**
 * The sum over `homes` independent homes, each of which has the device with the probability `ownership`.
 *
 * One home, and few homes with the device: the whole distribution. Otherwise one of the same mean, variance and skewness.
 * Where fewer than one home in fifty has the device, homes are taken in groups with a probability of 1/50; the variance of
 * the number of homes is then too small by 2 % at most.
 */
export function sumOverHomes(model: HomeModel, homes: number): Distribution {
  const owners = homes * model.ownership
  const whole = timesCumulants(homeCumulants(model), homes)
  if (whole.mean === 0 || whole.variance <= whole.mean ** 2 * 1e-30) return exact(whole.mean)
  if (homes === 1) return homeDistribution(model)
  if (owners >= MANY_OWNERS) return matchedLognormal(whole)
  const groups = model.ownership >= LEAST_OWNERSHIP ? homes : Math.max(1, Math.ceil(owners / LEAST_OWNERSHIP))
  const group = homeDistribution({ ...model, ownership: owners / groups })
  // Nearly every home has the same exact draw: there is no width to put a lattice over.
  if (group.quantile(0.005) === group.quantile(0.995)) return matchedLognormal(whole)
  return independentCopies(group, groups)
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

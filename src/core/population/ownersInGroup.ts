/** Mean number of homes with the device in one group; more than three in a group are then rarer than 2 in 10,000. */
const MEAN_OWNERS = 0.25

/** Homes taken in equal groups: how many groups, and the probability of 0, 1, 2 and 3 homes with the device in one. */
export interface Grouping {
  readonly groups: number
  readonly probabilities: readonly [number, number, number, number]
}

/**
 * Groups for a device that few homes have, so that a sum over thousands of homes is one over some eighty groups.
 *
 *   P(j) = C(n, j) o^j (1 - o)^(n - j)      n = homes/groups, which need not be whole
 *
 * Groups of four and more count as fewer, and P(1) makes up for it, so that the mean is exact; the variance of the number
 * is too small by 1 % at most.
 * @param ownership at most 1/10, so that a group has two homes and more
 */
export function ownersInGroup(ownership: number, homes: number): Grouping {
  const groups = Math.max(1, Math.ceil((homes * ownership) / MEAN_OWNERS))
  const size = homes / groups
  const odds = ownership / (1 - ownership)
  const none = (1 - ownership) ** size
  const two = (none * size * (size - 1) * odds ** 2) / 2
  const three = Math.max(0, (two * (size - 2) * odds) / 3)
  const one = size * ownership - 2 * two - 3 * three
  return { groups, probabilities: [1 - one - two - three, one, two, three] }
}

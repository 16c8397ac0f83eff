import type { Interval } from '../quantity/interval.ts'
import type { ChosenDraw } from './drawFor.ts'

/** Sums of one chain of draws, and the longer chains that begin with it. */
interface Chain {
  readonly longer: WeakMap<ChosenDraw, Chain>
  readonly sums: Map<string, Interval>
}

const chain = (): Chain => ({ longer: new WeakMap(), sums: new Map() })
const beginning = chain()
/** Enough for quantities and a questionnaire's choices of hours; the oldest makes room, so that no caller fills memory. */
const MOST_SUMS = 16

/**
 * The interval of a sum that depends on typical draws alone, kept with the draws: most households own devices with several
 * modes that nobody reads.
 * @param draws of the modes that are summed, in order
 * @param numbers all else that the sum depends on, few and plain
 * @param make the sum's interval; asked where it is not known
 */
export function drawSum(
  draws: readonly ChosenDraw[],
  numbers: readonly number[],
  make: () => Interval,
): Interval {
  const { sums } = draws.reduce(longerChain, beginning)
  const key = numbers.join(' ')
  const known = sums.get(key)
  if (known) return known
  const interval = make()
  if (sums.size === MOST_SUMS) sums.delete(sums.keys().next().value!)
  sums.set(key, interval)
  return interval
}

function longerChain(from: Chain, draw: ChosenDraw): Chain {
  const known = from.longer.get(draw)
  if (known) return known
  const longer = chain()
  from.longer.set(draw, longer)
  return longer
}

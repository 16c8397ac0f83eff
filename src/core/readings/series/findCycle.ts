import { blockMeans } from './blockMeans.ts'
import { withoutTrend } from './straightLine.ts'

/** A series is gathered into at most this many blocks; a cycle of fewer than two blocks averages out in them. */
const BLOCKS = 2_000
/** A part has to look this much like the part one cycle later (1 is the same), where at least four cycles fit in. */
const LEAST_LIKENESS = 0.5
/** Where only two or three fit in, a slow wander could pass for a cycle, so the likeness must be nearly full. */
const LEAST_LIKENESS_OF_FEW = 0.8
const FEW_CYCLES = 4
/** Chance alone makes unrelated parts of n values alike by about 1/sqrt(n). */
const TIMES_CHANCE = 4

/**
 * The period of a series that repeats itself, in steps, or null.
 *
 * Found by autocorrelation, the straight line taken off before: of all shifts beyond the first that makes the series unlike
 * itself, the shortest peak that is nearly as high as the highest. The peaks at multiples of the period then sharpen it.
 * At least two cycles must fit in. The thresholds are the service's own.
 */
export function findCycle(values: readonly number[]): number | null {
  const { means, length } = blockMeans(values, BLOCKS)
  const likeness = likenessByShift(withoutTrend(means))
  const first = likeness.findIndex((value) => value <= 0)
  if (first < 0) return null
  const best = highest(likeness, first, likeness.length - 1)
  const enough = 0.9 * likeness[best]!
  const shift = likeness.findIndex((value, k) => k >= first && value >= enough && isPeak(likeness, k))
  if (shift < 0 || likeness[shift]! < threshold(shift, means.length)) return null
  return sharpened(likeness, shift) * length
}

const isPeak = (values: readonly number[], k: number) =>
  k > 0 && k + 1 < values.length && values[k]! >= values[k - 1]! && values[k]! >= values[k + 1]!

const threshold = (shift: number, count: number) =>
  Math.max(
    shift * FEW_CYCLES <= count ? LEAST_LIKENESS : LEAST_LIKENESS_OF_FEW,
    TIMES_CHANCE / Math.sqrt(count - shift),
  )

/** How alike a series is to itself shifted by k steps, for k from 0 to just above half of it: -1 to 1. */
function likenessByShift(values: readonly number[]): number[] {
  const most = Math.floor(values.length / 2) + 1
  return Array.from({ length: Math.min(most, values.length - 1) + 1 }, (_, shift) => {
    let [product, early, late] = [0, 0, 0]
    for (let i = shift; i < values.length; i++) {
      product += values[i]! * values[i - shift]!
      early += values[i - shift]! ** 2
      late += values[i]! ** 2
    }
    return early > 0 && late > 0 ? product / Math.sqrt(early * late) : 0
  })
}

function highest(values: readonly number[], from: number, to: number): number {
  let best = from
  for (let k = from + 1; k <= to; k++) if (values[k]! > values[best]!) best = k
  return best
}

/** The peak near each multiple of the period, over its number: an error of one step shrinks with every cycle. */
function sharpened(likeness: readonly number[], shift: number): number {
  let period = shift
  for (let cycles = 2; ; cycles++) {
    const near = Math.round(cycles * period)
    const slack = Math.floor(period / 4)
    if (near + slack >= likeness.length) return period
    period = highest(likeness, near - slack, near + slack) / cycles
  }
}

import { intervalOfSum } from '../quantity/intervalOfSum.ts'
import { significant } from '../quantity/significant.ts'
import { type Term, termMean, termVariance } from '../quantity/term.ts'
import { varianceOfSum } from '../quantity/varianceOfSum.ts'
import type { MeterAccuracy } from '../readings/reading.ts'
import type { ExpectedWidth } from './estimate.ts'
import { LEAST_SHARE, type ModeOfDevice } from './nextReadings.ts'
import { onceRead } from './onceRead.ts'

/** How many readings a caller is told of. */
const READINGS = [1, 2, 5]
const MOST_READINGS = Math.max(...READINGS)
/** No caller's meter can have this id, since it has blanks. */
const ONE_WATTMETER = 'the wattmeter of the next readings'

/**
 * How wide the interval of the total energy would be after the best one, two and five readings, all with one plug-in
 * wattmeter, whose gain they share. Readings are chosen one after the other: the one that removes most of the variance
 * that the ones before it have left (which need not be the order of nextReadings, where each stands alone).
 *
 * Each reading is taken to show the present mean. What it will show is not known; the mean width over all that it may
 * show is, within 2 % of the present width, what is given here (test/core/estimate/expectedWidths.test.ts, brute force).
 * Where fewer readings than that are worth taking, the last entry is of all that are. Worked out by convolution whatever
 * the estimate's method.
 */
export function expectedWidths(
  modes: readonly ModeOfDevice[],
  weeksPerYear: number,
  wattmeter: MeterAccuracy,
  coverage: number,
): ExpectedWidth[] {
  const present = modes.map(({ terms }) => ({ ...terms.energy, drawn: undefined }))
  const read = modes.map(({ terms }) => onceRead(terms, weeksPerYear, wattmeter, ONE_WATTMETER))
  const order = bestReadings(present, read)
  const presentWidth = widthOf(present, coverage)
  return stopsOf(order.length).map((readings) => {
    const taken = order.slice(0, readings)
    const width = widthOf(replaced(present, read, taken), coverage)
    return {
      readings,
      at: taken.map((place) => ({ deviceId: modes[place]!.deviceId, mode: modes[place]!.terms.mode })),
      widthKwhPerYear: significant(width),
      widthShare: significant(width / presentWidth),
    }
  })
}

const stopsOf = (found: number): number[] => [
  ...READINGS.filter((readings) => readings <= found),
  ...(found > 0 && !READINGS.includes(found) ? [found] : []),
]

function widthOf(terms: readonly Term[], coverage: number): number {
  const { low, high } = intervalOfSum(terms, coverage)
  return high - low
}

const replaced = (present: readonly Term[], read: readonly Term[], taken: readonly number[]): Term[] =>
  present.map((term, place) => (taken.includes(place) ? read[place]! : term))

/** Places of the best readings, best first, as long as one is worth taking. */
function bestReadings(present: readonly Term[], read: readonly Term[]): number[] {
  const taken: number[] = []
  while (taken.length < MOST_READINGS) {
    const best = bestNext(replaced(present, read, taken), read, taken)
    if (best === null) break
    taken.push(best)
  }
  return taken
}

function bestNext(terms: readonly Term[], read: readonly Term[], taken: readonly number[]): number | null {
  const { total, removedBy } = varianceOfSum(terms)
  const meansRead = taken.reduce((sum, place) => sum + termMean(terms[place]!), 0)
  let best: number | null = null
  let mostRemoved = 0
  for (const [place, most] of removedBy.entries()) {
    if (total === 0 || taken.includes(place) || most < LEAST_SHARE * total) continue
    const removed = most - varianceLeft(read[place]!, meansRead)
    if (removed < LEAST_SHARE * total || removed <= mostRemoved) continue
    best = place
    mostRemoved = removed
  }
  return best
}

/** A reading's own variance, and its covariances with those that the same meter has taken before (GUM 5.2.2). */
function varianceLeft(read: Term, meansRead: number): number {
  const common = read.metered!.gain ** 2 / 3
  return termVariance(read) + 2 * common * termMean(read) * meansRead
}

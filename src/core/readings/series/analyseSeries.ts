import { meanOf } from './blockMeans.ts'
import { comparePeriods } from './comparePeriods.ts'
import { findCycle } from './findCycle.ts'
import { slopeOf } from './straightLine.ts'
import { uncertaintyOfMean } from './uncertaintyOfMean.ts'

export const VERDICTS = ['stable', 'unstable', 'too-short'] as const

/** How a series of power samples was judged, and what it says. */
export interface SeriesAnalysis {
  readonly verdict: (typeof VERDICTS)[number]
  /** The cycle that the series repeats, or null where none was found. */
  readonly cycle: { readonly periodSeconds: number; readonly cycles: number } | null
  readonly samples: number
  readonly durationSeconds: number
  /** Samples that the mean is taken over: the last two thirds, or the whole cycles in them. */
  readonly used: number
  readonly meanW: number
  readonly slopeWPerHour: number
  /** The largest slope that still counts as stable. */
  readonly slopeLimitWPerHour: number
  /** Of the mean, from the scatter alone (type A). */
  readonly standardUncertaintyW: number
  /** How many independent samples, or whole cycles, would give as sure a mean. */
  readonly effectiveSamples: number
  readonly degreesOfFreedom: number
}

/** Shortest series that can be judged, s. */
export const SHORTEST_SECONDS = 15 * 60
/** Fewest whole cycles that can be judged. */
export const FEWEST_CYCLES = 4
const SECONDS_PER_HOUR = 3600

/**
 * Mean power of a series of samples, and whether the series is stable.
 *
 * The first third is left out. Stable is a slope of at most 10 mW/h where the mean is at most 1 W, and of at most 1 % of
 * the mean an hour above: of the least-squares line, or, where the series repeats itself, from the middle of one
 * period of whole cycles to the middle of the next. Below 15 minutes, or four cycles, nothing can be said: too short.
 * Source: IEC 62301:2011 5.3.2 (from memory, mark M in every figure); how a cycle is found is the service's own.
 * @param watts at least two samples, none negative
 */
export function analyseSeries(watts: readonly number[], intervalSeconds: number): SeriesAnalysis {
  const late = watts.slice(Math.floor(watts.length / 3))
  const period = findCycle(late)
  const judged = period === null ? straight(late) : comparePeriods(late, period)
  const durationSeconds = watts.length * intervalSeconds
  const slopeWPerHour = (judged.slope * SECONDS_PER_HOUR) / intervalSeconds
  const slopeLimitWPerHour = 0.01 * Math.max(1, judged.mean)
  const tooShort =
    durationSeconds < SHORTEST_SECONDS || (judged.cycles !== null && judged.cycles < FEWEST_CYCLES)
  return {
    verdict: tooShort ? 'too-short' : Math.abs(slopeWPerHour) <= slopeLimitWPerHour ? 'stable' : 'unstable',
    cycle: period === null ? null : { periodSeconds: period * intervalSeconds, cycles: judged.cycles! },
    samples: watts.length,
    durationSeconds,
    used: judged.used,
    meanW: judged.mean,
    slopeWPerHour,
    slopeLimitWPerHour,
    standardUncertaintyW: judged.standard,
    effectiveSamples: judged.effective,
    degreesOfFreedom: judged.degrees,
  }
}

const straight = (late: readonly number[]) => ({
  mean: meanOf(late),
  slope: slopeOf(late),
  used: late.length,
  cycles: null,
  ...uncertaintyOfMean(late),
})

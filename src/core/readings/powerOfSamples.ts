import type { Flag, Warning } from '../estimate/estimate.ts'
import { studentT } from '../quantity/studentT.ts'
import { meteredValue } from './meteredValue.ts'
import type { PowerOfReading, ReadingContext } from './powerModel.ts'
import type { SamplesReading } from './reading.ts'
import { shown } from './shown.ts'
import {
  analyseSeries,
  FEWEST_CYCLES,
  type SeriesAnalysis,
  SHORTEST_SECONDS,
} from './series/analyseSeries.ts'

/** Fewer have a t-distribution without a variance; a series that scatters like that is not stable, and flagged. */
const FEWEST_DEGREES = 3
/** Longest interval that IEC 62301:2011 5.3.2 lets samples be apart, s (M). */
const LONGEST_INTERVAL_SECONDS = 1

/**
 * Real power of a series of samples: the mean of its stable part (analyseSeries.ts), with two independent errors.
 *
 *   P = mean (1 + gain) + counts + spread T
 *
 * gain and counts are the meter's (type B), and do not average out; T is Student's t with the degrees of freedom of
 * the series (type A). T stands as a factor 1 + (spread/mean) T, which differs by spread x gain, far below either.
 * Source: JCGM 100:2008 4.2 and 4.3, combined by JCGM 101:2008.
 */
export function powerOfSamples(reading: SamplesReading, context: ReadingContext): PowerOfReading {
  const series = analyseSeries(reading.watts, reading.intervalSeconds)
  const { metered, warnings } = meteredValue(series.meanW, reading, context)
  const relative = series.standardUncertaintyW / series.meanW
  const degrees = Math.max(FEWEST_DEGREES, series.degreesOfFreedom)
  const flag: Flag = series.verdict === 'stable' ? 'measured' : 'partly-measured'
  return {
    power: { coefficient: 1, factors: relative > 0 ? [studentT(1, relative, degrees)] : [], metered },
    series,
    flag,
    explanation: explain(series),
    warnings: [...warningsOf(series, reading), ...warnings],
  }
}

function explain({
  meanW,
  used,
  samples,
  verdict,
  cycle,
  slopeWPerHour,
  slopeLimitWPerHour,
}: SeriesAnalysis) {
  const over = cycle === null ? 'the last two thirds' : `whole cycles of ${shown(cycle.periodSeconds)} s`
  return `P = mean of ${used} of ${samples} samples (${over}) = ${shown(meanW)} W; ${verdict} by IEC 62301:2011 5.3.2: slope ${shown(1000 * slopeWPerHour)} mW/h, limit ${shown(1000 * slopeLimitWPerHour)} mW/h.`
}

function warningsOf(series: SeriesAnalysis, { intervalSeconds }: SamplesReading): Warning[] {
  const warnings: Warning[] = []
  if (series.verdict === 'too-short') warnings.push(tooShort(series))
  if (series.verdict === 'unstable')
    warnings.push({
      code: 'series-unstable',
      message: `The power is not stable: it changes by ${shown(1000 * series.slopeWPerHour)} mW an hour, and ${shown(1000 * series.slopeLimitWPerHour)} mW is the most that IEC 62301:2011 lets pass. The device may not have reached its mode yet. Let it settle and go on sampling, up to three hours, or meter the energy over a day.`,
    })
  if (intervalSeconds > LONGEST_INTERVAL_SECONDS)
    warnings.push({
      code: 'sampling-interval-long',
      message: `Samples ${intervalSeconds} s apart can miss short peaks; IEC 62301:2011 asks for at most 1 s. Sample faster, or meter the energy, which misses nothing.`,
    })
  return warnings
}

function tooShort({ durationSeconds, cycle }: SeriesAnalysis): Warning {
  const what =
    durationSeconds < SHORTEST_SECONDS
      ? `The series lasts ${shown(durationSeconds / 60)} minutes; below 15 minutes nothing can be said on whether the power is stable. Sample for at least 15 minutes.`
      : `The power repeats itself every ${shown(cycle!.periodSeconds)} s, and only ${cycle!.cycles} whole cycles are in the last two thirds of the series; ${FEWEST_CYCLES} are needed. Sample for at least ${Math.ceil((1.5 * FEWEST_CYCLES * cycle!.periodSeconds) / 60)} minutes.`
  return { code: 'series-too-short', message: what }
}

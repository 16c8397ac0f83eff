import { significant } from '../../quantity/significant.ts'
import type { SeriesAnalysis } from './analyseSeries.ts'

/** An analysis with its figures as they are answered: six digits. */
export const significantSeries = (series: SeriesAnalysis): SeriesAnalysis => ({
  ...series,
  cycle: series.cycle && { ...series.cycle, periodSeconds: significant(series.cycle.periodSeconds) },
  durationSeconds: significant(series.durationSeconds),
  meanW: significant(series.meanW),
  slopeWPerHour: significant(series.slopeWPerHour),
  slopeLimitWPerHour: significant(series.slopeLimitWPerHour),
  standardUncertaintyW: significant(series.standardUncertaintyW),
  effectiveSamples: significant(series.effectiveSamples),
  degreesOfFreedom: significant(series.degreesOfFreedom),
})

import type { SamplesReading } from '../reading.ts'
import type { SeriesAnalysis } from '../series/analyseSeries.ts'
import { shown } from '../shown.ts'
import { meterStep } from './meterStep.ts'
import { type Evaluated, step, type Step } from './step.ts'

/** What counts of a series, whether it is stable, and what its scatter adds to the meter's own error. */
export function stepsOfSamples(reading: SamplesReading, { read, context }: Evaluated): Step[] {
  const series = read.series!
  return [
    step(
      'The first third of the series is left out, since devices take a while to settle.',
      `${series.samples} samples, ${reading.intervalSeconds} s apart`,
      `${series.used} samples count`,
    ),
    ...cycle(series),
    drift(series),
    step(
      'The mean of what counts is the power: energy over time, not a mean of peaks.',
      'P = sum of samples / number',
      `${shown(series.meanW)} W`,
    ),
    scatter(series),
    meterStep(series.meanW, reading, context),
  ]
}

function cycle({ cycle: found }: SeriesAnalysis): Step[] {
  if (!found) return []
  return [
    step(
      'The power repeats itself: shifted by one period, the series looks like itself again. So whole cycles alone count, since a part of one would bend the mean.',
      'shortest shift with high autocorrelation',
      `${found.cycles} cycles of ${shown(found.periodSeconds)} s`,
    ),
  ]
}

function drift({ cycle: found, slopeWPerHour, slopeLimitWPerHour, verdict, meanW }: SeriesAnalysis): Step {
  const limit = meanW <= 1 ? '10 mW an hour, for up to 1 W' : '1 % of the power an hour, for more than 1 W'
  const how = found
    ? 'slope = (mean of the later cycles - mean of the earlier) / time between their middles'
    : 'slope of the straight line through the samples (least squares)'
  return step(
    `Is it stable? IEC 62301:2011, 5.3.2 (from memory) allows a slope of ${limit}, over at least 15 minutes${found ? ' and four cycles' : ''}.`,
    how,
    `${shown(1000 * slopeWPerHour)} mW/h, limit ${shown(1000 * slopeLimitWPerHour)} mW/h: ${verdict.replace('-', ' ')}`,
  )
}

function scatter({ cycle: found, standardUncertaintyW, used, effectiveSamples }: SeriesAnalysis): Step {
  const parts = found ? 'cycles' : 'samples'
  return step(
    `The samples scatter, so their mean does, too (type A). Neighbouring samples are alike, so ${used} of them are worth fewer independent ones, and the mean is less sure than their number suggests.`,
    `u = s / sqrt(n_eff - 1), n_eff = ${shown(effectiveSamples)} independent ${parts}`,
    `+-${shown(standardUncertaintyW)} W (standard uncertainty)`,
  )
}

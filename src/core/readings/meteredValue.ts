import type { Warning } from '../estimate/estimate.ts'
import type { MeterReadingValue } from '../quantity/term.ts'
import type { ReadingContext } from './powerModel.ts'
import type { MeterAccuracy } from './reading.ts'

/**
 * A shown figure with its meter's limits of error, both rectangular: +-(percentOfReading % of the reading + counts x
 * resolution). Without a stated accuracy the figure is taken as exact, and a warning says so.
 * Source: JCGM 100:2008 (GUM) 4.3.7; the form "% rdg + dgt" is that of instrument manuals.
 */
export function meteredValue(
  value: number,
  reading: { readonly meterId?: string | undefined; readonly accuracy?: MeterAccuracy | undefined },
  context: ReadingContext,
): { readonly metered: MeterReadingValue; readonly warnings: readonly Warning[] } {
  const meter = reading.meterId === undefined ? undefined : context.meters.get(reading.meterId)
  const accuracy = meter ?? reading.accuracy
  if (!accuracy) return { metered: { value, gain: 0, counts: 0, meter: null }, warnings: [NO_ACCURACY] }
  const counts = accuracy.counts * accuracy.resolution
  const metered = { value, gain: accuracy.percentOfReading / 100, counts, meter: meter?.id ?? null }
  return { metered, warnings: [] }
}

const NO_ACCURACY: Warning = {
  code: 'accuracy-unknown',
  message:
    'No meter accuracy is given, so the reading is taken as exact and its interval is too narrow. Give the meter’s percentOfReading, counts and resolution from its manual.',
}

import type { Warning } from '../estimate/estimate.ts'
import type { MeterReadingValue } from '../quantity/term.ts'
import { accuracyOf, type KnownAccuracy } from './accuracyOf.ts'
import type { MeterPreset } from './meterPreset.ts'
import type { ReadingContext } from './powerModel.ts'
import type { MeteredReading } from './reading.ts'
import { shown } from './shown.ts'

/**
 * A shown figure with its meter's limits of error, both rectangular: +-(percentOfReading % of the reading + counts x
 * resolution). Without a stated accuracy the figure is taken as exact, and a warning says so.
 * Source: JCGM 100:2008 (GUM) 4.3.7; the form "% rdg + dgt" is that of instrument manuals.
 */
export function meteredValue(
  value: number,
  reading: Pick<MeteredReading, 'kind' | 'meterId' | 'accuracy'>,
  context: Pick<ReadingContext, 'meters' | 'presets'>,
): { readonly metered: MeterReadingValue; readonly warnings: readonly Warning[] } {
  const accuracy = accuracyOf(reading, context)
  const { limits, meter } = accuracy
  if (!limits) return { metered: { value, gain: 0, counts: 0, meter: null }, warnings: [unknown(accuracy)] }
  const counts = limits.counts * limits.resolution
  const metered = { value, gain: limits.percentOfReading / 100, counts, meter }
  const warnings = accuracy.preset ? [classAssumed(accuracy.preset)] : []
  if (value <= counts && counts > 0) warnings.push(withinCounts(metered, accuracy))
  return { metered, warnings }
}

const TAKEN_AS_EXACT = 'so the reading is taken as exact and its interval is too narrow.'
const WHAT_TO_GIVE =
  'Give the meter’s percentOfReading, counts and resolution from its manual, or the preset of its class.'

function unknown({ preset, unit }: KnownAccuracy): Warning {
  if (preset)
    return {
      code: 'meter-does-not-read-this',
      message: `No accuracy in ${unit} is known for the class "${preset.name}", ${TAKEN_AS_EXACT} Check the kind of the reading. ${WHAT_TO_GIVE}`,
    }
  return {
    code: 'accuracy-unknown',
    message: `No meter accuracy is given, ${TAKEN_AS_EXACT} ${WHAT_TO_GIVE}`,
  }
}

const classAssumed = ({ name, source }: MeterPreset): Warning => ({
  code: 'meter-class-assumed',
  message: `The meter’s own accuracy is not given, so that of its class, ${name}, counts (${source}). Give percentOfReading, counts and resolution from its manual.`,
})

function withinCounts({ value, counts }: MeterReadingValue, { unit }: KnownAccuracy): Warning {
  const advice =
    unit === 'A'
      ? 'Read it again in the x10 window of a line splitter, or with a plug-in wattmeter.'
      : 'Read the energy over several hours instead, or use a meter with finer steps.'
  return {
    code: 'within-own-counts',
    message: `The reading of ${value} ${unit} is no larger than the meter’s own last digits (+-${shown(counts)} ${unit}), so it cannot be told from zero. ${advice}`,
  }
}

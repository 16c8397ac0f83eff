import type { Warning } from '../../estimate/estimate.ts'
import { accuracyOf } from '../accuracyOf.ts'
import { powerFactorOf } from '../powerFactor.ts'
import type { ReadingContext } from '../powerModel.ts'
import type { Reading } from '../reading.ts'

/** Below this power factor a small supply's current comes in short bursts; the service's own line. */
const NEARLY_A_SINE = 0.9

/**
 * An average-responding meter shows 1.11 times the mean of the rectified current, which is the rms value of a sine wave
 * and of nothing else. Source: instrument makers' application notes (V).
 */
export function averageResponding(reading: Reading, context: ReadingContext): Warning[] {
  if (reading.kind !== 'current' && reading.kind !== 'apparent-power') return []
  if (accuracyOf(reading, context).preset?.code !== 'clamp-average-responding') return []
  const { range } = powerFactorOf(reading.powerFactor, context.powerFactor)
  if (range.high >= NEARLY_A_SINE) return []
  const message = `An average-responding meter is right for sine waves only. With a power factor of at most ${range.high} the current is likely to come in short bursts, of which it shows too little, up to half (common practice, no source), and the interval does not count that. Read it again with a true-RMS meter.`
  return [{ code: 'average-responding-on-distorted-current', message }]
}

import { accuracyOf } from '../accuracyOf.ts'
import type { ReadingContext } from '../powerModel.ts'
import type { MeteredReading } from '../reading.ts'
import { shown } from '../shown.ts'
import { step, type Step } from './step.ts'

/** How far the meter may be off. */
export function meterStep(value: number, reading: MeteredReading, context: ReadingContext): Step {
  const { limits, preset, unit } = accuracyOf(reading, context)
  if (!limits)
    return step(
      'How far the meter may be off is not known, so its figure counts as exact; the true interval is wider.',
      '+-0',
      `${shown(value)} ${unit}`,
    )
  const { percentOfReading, counts, resolution } = limits
  const halfWidth = (percentOfReading / 100) * value + counts * resolution
  const whose = preset ? ` This meter’s own are not given, so those of its class count: ${preset.name}.` : ''
  return step(
    `A meter is right only within its limits of error: a share of the reading, and some steps of its last digit.${whose}`,
    `+-(${percentOfReading} % of ${shown(value)} ${unit} + ${counts} x ${resolution} ${unit})`,
    `${shown(value)} ${unit} +-${shown(halfWidth)} ${unit}`,
  )
}

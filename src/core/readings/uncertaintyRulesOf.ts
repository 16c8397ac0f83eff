import { intervalOfSum } from '../quantity/intervalOfSum.ts'
import { significant } from '../quantity/significant.ts'
import type { Term } from '../quantity/term.ts'
import { accuracyOf } from './accuracyOf.ts'
import { meterIsGoodEnough, type UncertaintyRule } from './meterIsGoodEnough.ts'
import type { ReadingContext } from './powerModel.ts'
import type { Reading } from './reading.ts'

/** The standard states uncertainties at this confidence. */
const CONFIDENCE = 0.95

/**
 * IEC 62301's rules for one reading's real power, with everything that makes it uncertain: the meter, the scatter, and
 * for a current the voltage and the power factor, too. None where no meter was read, or its accuracy is not known.
 */
export function uncertaintyRulesOf(
  reading: Reading,
  power: Term,
  context: ReadingContext,
  maximumCurrentRatio?: number,
): UncertaintyRule[] {
  if (reading.kind === 'declared' || reading.kind === 'thermal') return []
  if (!accuracyOf(reading, context).limits) return []
  const { expected, low, high } = intervalOfSum([power], CONFIDENCE)
  return meterIsGoodEnough(expected, (high - low) / 2, maximumCurrentRatio).map((rule) => ({
    ...rule,
    limitW: significant(rule.limitW),
    expandedUncertaintyW: significant(rule.expandedUncertaintyW),
  }))
}

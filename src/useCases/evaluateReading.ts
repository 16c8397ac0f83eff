import { FaultyInput, type Submitted } from '../core/fault.ts'
import { checkReadingToEvaluate } from '../core/readings/checkReadingToEvaluate.ts'
import { evaluateReading as evaluate } from '../core/readings/evaluateReading.ts'
import type { ReadingEvaluation, ReadingToEvaluate } from '../core/readings/readingEvaluation.ts'
import type { Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'

/**
 * Turns one reading into real power, step by step. Touches no database unless a past revision is asked for.
 * @throws FaultyInput naming every fault of shape and of the trade at once; DomainError unknown-revision, unknown-overlay-revision
 */
export async function evaluateReading(
  deps: Deps,
  sender: Sender,
  submitted: Submitted<ReadingToEvaluate>,
): Promise<ReadingEvaluation> {
  const catalogue = await callersCatalogue(deps, sender, submitted.value)
  const faults = [...submitted.faults, ...checkReadingToEvaluate(submitted.raw, catalogue)]
  if (submitted.value === null || faults.length > 0) throw new FaultyInput(faults)
  return evaluate(submitted.value, catalogue, deps.settings)
}

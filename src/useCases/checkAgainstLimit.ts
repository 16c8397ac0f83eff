import { FaultyInput, type Submitted } from '../core/fault.ts'
import { checkAgainstLimit as check } from '../core/limits/checkAgainstLimit.ts'
import { checkLimitQuestion } from '../core/limits/checkLimitQuestion.ts'
import type { LimitAnswer, LimitQuestion } from '../core/limits/limitCheck.ts'
import type { Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'

/**
 * Holds a reading against the published limits that its device may fall under.
 * @throws FaultyInput naming every fault of shape and of the trade at once; DomainError unknown-revision, unknown-overlay-revision
 */
export async function checkAgainstLimit(
  deps: Deps,
  sender: Sender,
  submitted: Submitted<LimitQuestion>,
): Promise<LimitAnswer> {
  const catalogue = await callersCatalogue(deps, sender, submitted.value)
  const faults = [...submitted.faults, ...checkLimitQuestion(submitted.raw, catalogue, deps.settings.limits)]
  if (submitted.value === null || faults.length > 0) throw new FaultyInput(faults)
  return check(submitted.value, catalogue, deps.settings)
}

import { FaultyInput, type Submitted } from '../core/fault.ts'
import { checkAgainstLimit as check } from '../core/limits/checkAgainstLimit.ts'
import { checkLimitQuestion } from '../core/limits/checkLimitQuestion.ts'
import type { LimitAnswer, LimitQuestion } from '../core/limits/limitCheck.ts'
import { catalogueOf } from './catalogueOf.ts'
import type { Deps } from './deps.ts'

/**
 * Holds a reading against the published limits that its device may fall under.
 * @throws FaultyInput naming every fault of shape and of the trade at once; DomainError unknown-revision
 */
export async function checkAgainstLimit(
  deps: Deps,
  submitted: Submitted<LimitQuestion>,
): Promise<LimitAnswer> {
  const catalogue = await catalogueOf(deps, submitted.value?.catalogueRevision)
  const faults = [...submitted.faults, ...checkLimitQuestion(submitted.raw, catalogue, deps.settings.limits)]
  if (submitted.value === null || faults.length > 0) throw new FaultyInput(faults)
  return check(submitted.value, catalogue, deps.settings)
}

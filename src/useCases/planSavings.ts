import { FaultyInput, type Submitted } from '../core/fault.ts'
import { checkHousehold } from '../core/inventory/checkHousehold.ts'
import { checkPlanOptions } from '../core/savings/checkPlanOptions.ts'
import { planSavings as plan } from '../core/savings/planSavings.ts'
import type { SavingsPlan } from '../core/savings/savingsPlan.ts'
import type { SavingsRequest } from '../core/savings/savingsRequest.ts'
import type { Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'
import { settingsAt } from './settingsAt.ts'

/**
 * Plans what one household can save. Touches no database unless a past revision is asked for.
 * @throws FaultyInput naming every fault of shape and of the trade at once; DomainError unknown-revision, unknown-overlay-revision, unknown-reference-revision,
 *   plan-too-large
 */
export async function planSavings(
  deps: Deps,
  sender: Sender,
  submitted: Submitted<SavingsRequest>,
): Promise<SavingsPlan> {
  const catalogue = await callersCatalogue(deps, sender, submitted.value)
  const settings = await settingsAt(deps, submitted.value?.referenceRevision)
  const faults = [
    ...submitted.faults,
    ...checkHousehold(submitted.raw, catalogue, settings),
    ...checkPlanOptions(submitted.raw, settings),
  ]
  if (submitted.value === null || faults.length > 0) throw new FaultyInput(faults)
  return plan(submitted.value, catalogue, settings)
}

import { checkDrawing } from '../core/estimate/checkDrawing.ts'
import type { Estimate } from '../core/estimate/estimate.ts'
import { estimate } from '../core/estimate/estimateHousehold.ts'
import { FaultyInput, type Submitted } from '../core/fault.ts'
import { checkHousehold } from '../core/inventory/checkHousehold.ts'
import type { Household } from '../core/inventory/household.ts'
import type { Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'
import { settingsAt } from './settingsAt.ts'

/**
 * Estimates what one household's devices draw. Touches no database unless a past revision is asked for.
 * @throws FaultyInput naming every fault of shape and of the trade at once; DomainError unknown-revision, unknown-overlay-revision, unknown-reference-revision
 */
export async function estimateHousehold(
  deps: Deps,
  sender: Sender,
  submitted: Submitted<Household>,
): Promise<Estimate> {
  const catalogue = await callersCatalogue(deps, sender, submitted.value)
  const settings = await settingsAt(deps, submitted.value?.referenceRevision)
  const faults = [
    ...submitted.faults,
    ...checkHousehold(submitted.raw, catalogue, settings),
    ...checkDrawing(submitted.raw, catalogue),
  ]
  if (submitted.value === null || faults.length > 0) throw new FaultyInput(faults)
  const made = estimate(submitted.value, catalogue, settings)
  deps.onEstimate?.(made.total.confidence)
  return made
}

import {
  compareTariffs as compare,
  type TariffComparison,
  type TariffComparisonRequest,
} from '../core/estimate/tariffComparison.ts'
import { FaultyInput, type Submitted } from '../core/fault.ts'
import { checkHousehold } from '../core/inventory/checkHousehold.ts'
import { checkTariffChoices } from '../core/money/checkTariffChoices.ts'
import type { Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'
import { settingsAt } from './settingsAt.ts'

/**
 * What one household's standby costs under each of several tariffs. Touches no database unless a past
 * revision is asked for.
 * @throws FaultyInput naming every fault of shape and of the trade at once; DomainError unknown-revision, unknown-overlay-revision,
 *   unknown-reference-revision
 */
export async function compareTariffs(
  deps: Deps,
  sender: Sender,
  submitted: Submitted<TariffComparisonRequest>,
): Promise<TariffComparison> {
  const catalogue = await callersCatalogue(deps, sender, submitted.value)
  const settings = await settingsAt(deps, submitted.value?.referenceRevision)
  const faults = [
    ...submitted.faults,
    ...checkTariffChoices(submitted.raw, settings.tariffs),
    ...checkHousehold(submitted.raw, catalogue, settings),
  ]
  if (submitted.value === null || faults.length > 0) throw new FaultyInput(faults)
  return compare(submitted.value, catalogue, settings)
}

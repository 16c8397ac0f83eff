import { FaultyInput, type Submitted } from '../core/fault.ts'
import { householdAt } from '../core/inventory/inventory.ts'
import type { SavingsPlan } from '../core/savings/savingsPlan.ts'
import type { PlanOptions, SavingsRequest } from '../core/savings/savingsRequest.ts'
import type { Sender } from './authorize.ts'
import type { AskedRevisions } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'
import { planSavings } from './planSavings.ts'
import { readInventory } from './readInventory.ts'
import { visitNamed } from './visitNamed.ts'

/** What is asked of a plan for a household that is kept. */
export interface PlanWanted extends AskedRevisions {
  /** Date of the visit; the last one where none is named. */
  readonly visit?: string | undefined
  readonly coverageProbability?: number | undefined
  readonly referenceRevision?: number | undefined
  readonly plan?: PlanOptions | undefined
}

/**
 * Plans what a household of the caller's organisation can save, as it was on a visit.
 * @param readRequest checks the shape of the household and the options together
 * @throws DomainError key-required, scope-missing, unknown-inventory, and what planSavings throws; FaultyInput
 */
export async function planForInventory(
  deps: Deps,
  sender: Sender,
  id: string,
  { value, faults }: Submitted<PlanWanted>,
  readRequest: (raw: unknown) => Submitted<SavingsRequest>,
): Promise<SavingsPlan> {
  const inventory = await readInventory(deps, sender, id)
  if (value === null || faults.length > 0) throw new FaultyInput(faults)
  const { visit, ...asked } = value
  const household = householdAt(inventory.content, visitNamed(inventory, visit))
  return planSavings(deps, sender, readRequest({ ...household, ...asked }))
}

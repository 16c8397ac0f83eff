import { base32 } from '../core/access/base32.ts'
import { basisOf } from '../core/estimate/basis.ts'
import { estimate } from '../core/estimate/estimateHousehold.ts'
import { FaultyInput, type Submitted } from '../core/fault.ts'
import { checkHousehold } from '../core/inventory/checkHousehold.ts'
import { householdAt, type Inventory } from '../core/inventory/inventory.ts'
import type { StoredEstimate } from '../core/inventory/storedEstimate.ts'
import type { OnceResult } from '../stores/once.ts'
import { authorize, type Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'
import { type EstimateWithStanding, standingOf } from './listStoredEstimates.ts'
import { ID_BYTES } from './makeInventory.ts'
import { onceOf } from './onceOf.ts'
import { readInventory } from './readInventory.ts'
import { settingsAt } from './settingsAt.ts'
import { visitNamed } from './visitNamed.ts'

/** What is asked of an estimate that is to be kept. */
export interface EstimateWanted {
  /** Date of the visit; the last one where none is named. */
  readonly visit?: string | undefined
  readonly coverageProbability?: number | undefined
  readonly catalogueRevision?: number | undefined
  readonly overlayRevision?: number | undefined
  readonly referenceRevision?: number | undefined
}

/**
 * Estimates an inventory as it was on a visit, and keeps the result with all that it was made from.
 * @param key Idempotency-Key; null where the caller sent none
 * @throws DomainError key-required, scope-missing, unknown-inventory, unknown-revision, unknown-overlay-revision,
 *   unknown-reference-revision, idempotency-key-malformed and what
 *   Once says; FaultyInput, also where the inventory no longer fits the catalogue or the operator's tariffs
 */
export async function storeEstimate(
  deps: Deps,
  sender: Sender,
  id: string,
  submitted: Submitted<EstimateWanted>,
  key: string | null,
): Promise<OnceResult<EstimateWithStanding>> {
  const origin = authorize(sender, 'intake')
  const once = onceOf(deps, key, 'store-estimate', id, submitted.raw)
  const inventory = await readInventory(deps, sender, id)
  if (submitted.value === null || submitted.faults.length > 0) throw new FaultyInput(submitted.faults)
  const stored = await made(deps, sender, inventory, submitted.value)
  const event = {
    at: new Date(stored.madeAt),
    origin,
    action: 'estimate.store',
    subjectKind: 'inventory',
    subjectId: id,
    before: null,
    after: { estimate: stored.id, catalogueRevision: stored.catalogueRevision },
  }
  const { result, replayed } = await deps.inventoryStore.addEstimate(
    origin.caller.organisation,
    stored,
    event,
    once,
  )
  const today = await callersCatalogue(deps, sender, null)
  return { result: { stored: result, standing: standingOf(deps, today, inventory, result) }, replayed }
}

async function made(
  deps: Deps,
  sender: Sender,
  inventory: Inventory,
  wanted: EstimateWanted,
): Promise<StoredEstimate> {
  const { coverageProbability } = wanted
  const visit = visitNamed(inventory, wanted.visit)
  const household = {
    ...householdAt(inventory.content, visit),
    ...(coverageProbability !== undefined && { coverageProbability }),
  }
  const catalogue = await callersCatalogue(deps, sender, wanted)
  const settings = await settingsAt(deps, wanted.referenceRevision)
  const faults = checkHousehold(household, catalogue, settings)
  if (faults.length > 0) throw new FaultyInput(faults)
  const result = estimate(household, catalogue, settings)
  deps.onEstimate?.(result.total.confidence)
  return {
    id: base32(deps.random(ID_BYTES)),
    inventory: inventory.id,
    visit: visit.date,
    madeAt: deps.clock().toISOString(),
    catalogueRevision: result.catalogueRevision,
    methodVersion: result.used.methodVersion,
    household,
    basis: basisOf(household, settings),
    result,
  }
}

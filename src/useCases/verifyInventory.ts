import { FaultyInput, type Submitted } from '../core/fault.ts'
import { termsOf, type Visit } from '../core/inventory/inventory.ts'
import type { PlannedMeasure, Verification, VerificationRequest } from '../core/verification/verification.ts'
import { without } from '../core/without.ts'
import type { Sender } from './authorize.ts'
import type { AskedRevisions } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'
import { readInventory } from './readInventory.ts'
import { verifySavings } from './verifySavings.ts'
import { visitNamed } from './visitNamed.ts'

/** What is asked of a verification of a household that is kept. */
export interface VerificationWanted extends AskedRevisions {
  /** Dates of the visits; the first one and the last one where none are named. */
  readonly before?: string | undefined
  readonly after?: string | undefined
  readonly coverageProbability?: number | undefined
  readonly referenceRevision?: number | undefined
  readonly plan?: readonly PlannedMeasure[] | undefined
}

/**
 * What was saved between two visits of a household of the caller's organisation.
 * @param readRequest checks the shape of what both visits come to
 * @throws DomainError key-required, scope-missing, unknown-inventory, and what verifySavings throws; FaultyInput, also where
 *   both visits are one
 */
export async function verifyInventory(
  deps: Deps,
  sender: Sender,
  id: string,
  { value, faults }: Submitted<VerificationWanted>,
  readRequest: (raw: unknown) => Submitted<VerificationRequest>,
): Promise<Verification> {
  const inventory = await readInventory(deps, sender, id)
  if (value === null || faults.length > 0) throw new FaultyInput(faults)
  const before = visitNamed(inventory, value.before, '/before', 'first')
  const after = visitNamed(inventory, value.after, '/after')
  if (before.date >= after.date) throw notInOrder(before, after)
  const found = ({ meters, devices }: Visit) => ({ ...(meters && { meters }), devices })
  const request = {
    ...termsOf(inventory.content),
    ...without(value, 'before', 'after'),
    before: found(before),
    after: found(after),
  }
  return verifySavings(deps, sender, readRequest(request))
}

const notInOrder = (before: Visit, after: Visit) =>
  new FaultyInput([
    {
      pointer: '/after',
      code: 'visits-not-in-order',
      message: `A verification needs two visits, the first before the second; these are of ${before.date} and ${after.date}. Add a follow-up visit, or name the dates of two.`,
    },
  ])

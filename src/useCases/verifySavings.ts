import { FaultyInput, type Submitted } from '../core/fault.ts'
import { checkVerification } from '../core/verification/checkVerification.ts'
import type { Verification, VerificationRequest } from '../core/verification/verification.ts'
import { verifySavings as verify } from '../core/verification/verifySavings.ts'
import { catalogueOf } from './catalogueOf.ts'
import type { Deps } from './deps.ts'

/**
 * What was saved between two visits. Touches no database unless a past catalogue revision is asked for.
 * @throws FaultyInput naming every fault of shape and of the trade at once; DomainError unknown-revision
 */
export async function verifySavings(
  deps: Deps,
  submitted: Submitted<VerificationRequest>,
): Promise<Verification> {
  const catalogue = await catalogueOf(deps, submitted.value?.catalogueRevision)
  const faults = [...submitted.faults, ...checkVerification(submitted.raw, catalogue, deps.settings)]
  if (submitted.value === null || faults.length > 0) throw new FaultyInput(faults)
  return verify(submitted.value, catalogue, deps.settings)
}

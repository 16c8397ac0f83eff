import { FaultyInput, type Submitted } from '../core/fault.ts'
import { checkVerification } from '../core/verification/checkVerification.ts'
import type { Verification, VerificationRequest } from '../core/verification/verification.ts'
import { verifySavings as verify } from '../core/verification/verifySavings.ts'
import type { Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'
import { settingsAt } from './settingsAt.ts'

/**
 * What was saved between two visits. Touches no database unless a past revision is asked for.
 * @throws FaultyInput naming every fault of shape and of the trade at once; DomainError unknown-revision, unknown-overlay-revision,
 *   unknown-reference-revision
 */
export async function verifySavings(
  deps: Deps,
  sender: Sender,
  submitted: Submitted<VerificationRequest>,
): Promise<Verification> {
  const catalogue = await callersCatalogue(deps, sender, submitted.value)
  const settings = await settingsAt(deps, submitted.value?.referenceRevision)
  const faults = [...submitted.faults, ...checkVerification(submitted.raw, catalogue, settings)]
  if (submitted.value === null || faults.length > 0) throw new FaultyInput(faults)
  return verify(submitted.value, catalogue, settings)
}

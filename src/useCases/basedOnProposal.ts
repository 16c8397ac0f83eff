import { DomainError } from '../core/fault.ts'
import type { Proposal } from '../core/proposals/proposal.ts'

/**
 * Lets an answer to a proposal pass where it is to what the proposal says now.
 * @param basedOn versions of the proposal that the editor has read; null where none was named
 * @throws DomainError precondition-required, stale-proposal
 */
export function requireBasedOn(proposal: Proposal, basedOn: readonly string[] | null): void {
  if (basedOn === null)
    throw new DomainError(
      'precondition-required',
      'Say which state of the proposal this answers: send the ETag of what you have read as If-Match.',
    )
  if (basedOn.includes(proposal.version)) return
  throw new DomainError(
    'stale-proposal',
    'The readings behind the proposal, or the category, have changed since. Read it again; current is how it is now.',
    { current: proposal },
  )
}

import { authorOf } from '../core/catalogue/revision.ts'
import { DomainError } from '../core/fault.ts'
import type { Proposal } from '../core/proposals/proposal.ts'
import type { ProposalPlace } from '../core/proposals/proposalPlace.ts'
import type { Rejection } from '../core/proposals/rejection.ts'
import type { ProposalBasis } from './acceptProposal.ts'
import { authorizeOperator, type Sender } from './authorize.ts'
import { requireBasedOn } from './basedOnProposal.ts'
import { catalogueOf } from './catalogueOf.ts'
import type { Deps } from './deps.ts'
import { proposalAt } from './readProposal.ts'

/**
 * Turns a proposal down. The reason is kept, and the proposal is not open again until there are more readings, as
 * core/proposals/openAgainAt.ts says.
 * @returns the proposal as it is then
 * @throws DomainError key-required, scope-missing, operator-only, proposal-not-open, and what proposalAt and requireBasedOn throw
 */
export async function rejectProposal(
  deps: Deps,
  sender: Sender,
  place: ProposalPlace | null,
  { reason, basedOn }: { readonly reason: string } & ProposalBasis,
): Promise<Proposal> {
  const origin = authorizeOperator(sender, 'catalogue:edit')
  const catalogue = await catalogueOf(deps, undefined)
  const proposal = await proposalAt(deps, catalogue, place)
  requireBasedOn(proposal, basedOn)
  if (proposal.status !== 'open')
    throw new DomainError(
      'proposal-not-open',
      `The proposal is ${proposal.status}; it is open again with ${proposal.openAgainAt} readings, and has ${proposal.n}.`,
      { openAgainAt: proposal.openAgainAt },
    )
  const at = deps.clock()
  const rejection = { ...answered(proposal), author: authorOf({ origin }), reason, at }
  await deps.proposalStore.reject(rejection, {
    at,
    origin,
    action: 'proposal.reject',
    subjectKind: 'category',
    subjectId: proposal.category,
    before: null,
    after: { ...answered(proposal), reason },
  })
  return proposalAt(deps, catalogue, place)
}

const answered = (proposal: Proposal): Omit<Rejection, 'author' | 'reason' | 'at'> => ({
  category: proposal.category,
  mode: proposal.mode,
  yearFrom: proposal.yearFrom,
  yearTo: proposal.yearTo,
  version: proposal.version,
  n: proposal.n,
  lowW: proposal.low.proposedW,
  typicalW: proposal.typical.proposedW,
  highW: proposal.high.proposedW,
})

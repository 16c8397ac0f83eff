import { acceptedCategory } from '../core/proposals/acceptedCategory.ts'
import type { ProposalPlace } from '../core/proposals/proposalPlace.ts'
import type { Sender } from './authorize.ts'
import { requireBasedOn } from './basedOnProposal.ts'
import type { Deps } from './deps.ts'
import { type EditedCategory, type EditOptions, editCategory } from './editCategory.ts'
import { proposalAt } from './readProposal.ts'

/** What an answer to a proposal is based on. */
export interface ProposalBasis {
  /** Versions of the proposal that the editor has read; null where none was named. */
  readonly basedOn: readonly string[] | null
}

/**
 * Puts the figures of a proposal into the catalogue, as figures of a programme with their number of readings; one new revision, in
 * the one way in which a category is edited. An editor may accept what was rejected before.
 * @throws DomainError what editCategory, proposalAt and requireBasedOn throw
 */
export async function acceptProposal(
  deps: Deps,
  sender: Sender,
  place: ProposalPlace | null,
  { basedOn, ...options }: EditOptions & ProposalBasis,
): Promise<EditedCategory> {
  return editCategory(deps, sender, { ...options, action: 'accept-proposal' }, async (newest) => {
    const proposal = await proposalAt(deps, newest, place)
    requireBasedOn(proposal, basedOn)
    return { category: acceptedCategory(newest.categories.get(proposal.category)!, proposal) }
  })
}

import type { Catalogue } from '../core/catalogue/catalogue.ts'
import { DomainError } from '../core/fault.ts'
import type { Proposal } from '../core/proposals/proposal.ts'
import type { ProposalPlace } from '../core/proposals/proposalPlace.ts'
import { FEWEST_HOUSEHOLDS, FEWEST_READINGS } from '../core/proposals/propose.ts'
import { samePlace } from '../core/proposals/samePlace.ts'
import { authorizeOperator, type Sender } from './authorize.ts'
import { categoryProposals, namesInUse } from './categoryProposals.ts'
import { catalogueOf } from './catalogueOf.ts'
import type { Deps } from './deps.ts'

/**
 * One proposal as it is now, whether it is open or was answered.
 * @param place null where what was asked for names no years
 * @throws DomainError key-required, scope-missing, operator-only, unknown-proposal
 */
export async function readProposal(
  deps: Deps,
  sender: Sender,
  place: ProposalPlace | null,
): Promise<Proposal> {
  authorizeOperator(sender, 'catalogue:edit')
  return proposalAt(deps, await catalogueOf(deps, undefined), place)
}

/** The same, of a catalogue, for a caller that may. @throws DomainError unknown-proposal */
export async function proposalAt(
  deps: Deps,
  catalogue: Catalogue,
  place: ProposalPlace | null,
): Promise<Proposal> {
  const names = place && (await namesInUse(deps, catalogue)).get(place.category)
  const all = place && names ? await categoryProposals(deps, catalogue, place.category, names) : []
  const proposal = all.find((one) => samePlace(one, place!))
  if (proposal) return proposal
  throw new DomainError(
    'unknown-proposal',
    `There is no such proposal. One comes up for a typical draw of the catalogue, by its category, mode and years, once ${FEWEST_READINGS} devices in ${FEWEST_HOUSEHOLDS} households were read.`,
  )
}

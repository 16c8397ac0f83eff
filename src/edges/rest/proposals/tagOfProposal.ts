import type { FastifyRequest } from 'fastify'
import { DomainError } from '../../../core/fault.ts'
import { addressOf, showProposal } from '../../../schemas/proposal.ts'
import type { Proposal, ProposalPlace } from '../../../useCases/listProposals.ts'
import { proposalTag } from '../conditional.ts'
import { basisOfProposal } from '../ifMatch.ts'

/** The tag of a proposal as it is now. */
export const tagOfProposal = (proposal: Proposal) =>
  proposalTag(addressOf(proposal).replaceAll('/', '.'), proposal.version)

/** The versions of a proposal that If-Match names; null where the header is missing. */
export const basedOnProposal = (request: FastifyRequest, place: ProposalPlace | null) =>
  basisOfProposal(request, (version) =>
    place === null ? '' : proposalTag(addressOf(place).replaceAll('/', '.'), version),
  )

/** Tells whoever answers a proposal that has changed how it is now, and the tag to base the next answer on. */
export async function withCurrentProposal<T>(answer: Promise<T>): Promise<T> {
  try {
    return await answer
  } catch (error) {
    if (!(error instanceof DomainError) || error.code !== 'stale-proposal') throw error
    const { current } = error.details as { readonly current: Proposal }
    const details = { current: showProposal(current), etag: tagOfProposal(current) }
    throw new DomainError(error.code, error.message, details)
  }
}

/** What an answer to a proposal may be refused for, besides those of every edit. */
export const ANSWERS_PROPOSAL = [
  'unknown-proposal',
  'malformed-condition',
  'precondition-required',
  'stale-proposal',
  'address-too-long',
] as const

/** How the tag is described. */
export const PROPOSAL_TAG = {
  ETag: {
    type: 'string',
    description: 'Tag of this state of the proposal; send it as If-Match to answer it',
  },
} as const

import type { RestContext } from '../restContext.ts'
import type { RestApp } from '../submitted.ts'
import { getProposal } from './getProposal.ts'
import { getProposals } from './getProposals.ts'
import { postAcceptance } from './postAcceptance.ts'
import { postRejection } from './postRejection.ts'

/** The routes of what readings say of the catalogue. */
export const PROPOSAL_ROUTES: readonly ((app: RestApp, context: RestContext) => void)[] = [
  getProposals,
  getProposal,
  postAcceptance,
  postRejection,
]

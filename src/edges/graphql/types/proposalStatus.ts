import type { Proposal } from '../../../core/proposals/proposal.ts'
import { enumOf } from '../enumOf.ts'

export const ProposalStatusEnum = enumOf<Proposal['status']>(
  'ProposalStatus',
  'Whether a proposal waits for an editor.',
  {
    open: 'It waits for an editor.',
    rejected: 'It was turned down, and waits for more readings.',
    accepted: 'The figures of the catalogue are from readings already, and it waits for more of them.',
  },
)

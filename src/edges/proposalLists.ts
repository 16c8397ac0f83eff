import { addressOf, placeOf } from '../schemas/proposal.ts'
import type { ProposalPlace } from '../useCases/listProposals.ts'
import type { StoredList } from './listCursor.ts'

/** The same for both edges, so that a cursor that either gave out is good for the other. */
export const PROPOSAL_LIST: StoredList<ProposalPlace, ProposalPlace> = {
  name: 'proposals',
  form: /^[a-z0-9-]{1,64}\/(off|standby|networked-standby|idle|no-load)\/(all|to-\d{4}|from-\d{4}|\d{4}-\d{4})$/,
  write: addressOf,
  read: (text) => {
    const [category = '', mode = '', years = ''] = text.split('/')
    return placeOf({ category, mode, years })!
  },
}

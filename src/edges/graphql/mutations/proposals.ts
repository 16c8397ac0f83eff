import { showProposal } from '../../../schemas/proposal.ts'
import { acceptProposal } from '../../../useCases/acceptProposal.ts'
import { rejectProposal } from '../../../useCases/rejectProposal.ts'
import { builder } from '../builder.ts'
import { editOptions } from '../editOptions.ts'
import { AnsweredProposalInput } from '../inputs/proposal.ts'
import { LargeChangeErrorType } from '../types/editErrors.ts'
import { EditedCategoryType } from '../types/editedCategory.ts'
import { CatalogueProposalType, StaleProposalErrorType } from '../types/proposal.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'

const SCOPE = 'Needs a key of the organisation that runs the service, with the scope catalogue:edit.'
const REASON = 'Why; kept for ever, 3 to 500 characters.'
const PROPOSAL = 'Which proposal, in which state.'

const AcceptInput = builder.inputType('AcceptProposalInput', {
  description: 'Which proposal is accepted, and why.',
  fields: (t) => ({
    proposal: t.field({ type: AnsweredProposalInput, required: true, description: PROPOSAL }),
    reason: t.string({ required: true, description: REASON }),
    confirm: t.boolean({
      description: 'Whether figures may change by more than a factor of three; false by default.',
    }),
  }),
})

const RejectInput = builder.inputType('RejectProposalInput', {
  description: 'Which proposal is rejected, and why.',
  fields: (t) => ({
    proposal: t.field({ type: AnsweredProposalInput, required: true, description: PROPOSAL }),
    reason: t.string({ required: true, description: REASON }),
  }),
})

const AcceptResult = mutationResult(
  'AcceptProposalResult',
  'The category with the accepted figures, or why they were not accepted.',
  EditedCategoryType,
  [StaleProposalErrorType, LargeChangeErrorType],
)
const RejectResult = mutationResult(
  'RejectProposalResult',
  'The rejected proposal, or why it was not rejected.',
  CatalogueProposalType,
  [StaleProposalErrorType],
)

builder.mutationFields((t) => ({
  acceptProposal: t.field({
    type: AcceptResult,
    nullable: true,
    description: `Puts the figures of a proposal into the catalogue, as figures of a programme with their number of readings, in one new revision. ${SCOPE}`,
    args: { input: t.arg({ type: AcceptInput, required: true, description: 'The proposal.' }) },
    resolve: (_root, { input: { proposal, ...said } }, { deps, sender }) =>
      orUserError(async () => {
        const { reason, confirm } = editOptions(sender, said)
        const { basedOn, yearFrom = null, yearTo = null, ...place } = proposal
        const options = { reason, confirm, basedOn: [basedOn] }
        return acceptProposal(deps, sender, { ...place, yearFrom, yearTo }, options)
      }),
  }),
  rejectProposal: t.field({
    type: RejectResult,
    nullable: true,
    description: `Turns a proposal down; it is open again once there are a quarter more readings, and at least eight more. ${SCOPE}`,
    args: { input: t.arg({ type: RejectInput, required: true, description: 'The proposal.' }) },
    resolve: (_root, { input: { proposal, ...said } }, { deps, sender }) =>
      orUserError(async () => {
        const { reason } = editOptions(sender, said)
        const { basedOn, yearFrom = null, yearTo = null, ...place } = proposal
        const options = { reason, basedOn: [basedOn] }
        return showProposal(await rejectProposal(deps, sender, { ...place, yearFrom, yearTo }, options))
      }),
  }),
}))

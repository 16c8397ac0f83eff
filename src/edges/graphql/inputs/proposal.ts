import { builder } from '../builder.ts'
import { ModeEnum } from '../types/enums.ts'

export const AnsweredProposalInput = builder.inputType('AnsweredProposalInput', {
  description: 'A proposal, as it was read.',
  fields: (t) => ({
    category: t.string({ required: true, description: 'Code of the category; not a name or alias.' }),
    mode: t.field({ type: ModeEnum, required: true, description: 'The mode.' }),
    yearFrom: t.int({ description: 'First year of manufacture of the draw; left out where it is open.' }),
    yearTo: t.int({ description: 'Last year of manufacture of the draw; left out where it is open.' }),
    basedOn: t.string({
      required: true,
      description: '`version` of the proposal as it was read; stale where readings came since.',
    }),
  }),
})

import { builder } from '../builder.ts'
import { householdTermFields, inventoryFields, tariffFields } from './estimate.ts'

export const VisitInput = builder.inputType('VisitInput', {
  description: 'All that was found in a household on one day: a full state, not a change.',
  fields: (t) => ({
    date: t.string({
      required: true,
      description: 'Day of the visit, YYYY-MM-DD; there is one visit a day.',
    }),
    notes: t.string({
      description: 'Notes of the assessor, 2,000 characters at most; no names or addresses.',
    }),
    ...inventoryFields(t),
  }),
})

const notes = 'What is to be remembered, 2,000 characters at most; no names or addresses.'

export const InventoryContentInput = builder.inputType('InventoryContentInput', {
  description: 'A household, with what holds on every visit, and the visits. Null is the same as absent.',
  fields: (t) => ({
    reference: t.string({
      required: true,
      description: 'Your own name for the household, which tells nothing of who lives there.',
    }),
    notes: t.string({ description: notes }),
    ...householdTermFields(t),
    ...tariffFields(t),
    visits: t.field({ type: [VisitInput], description: 'The visits, 50 at most; none by default.' }),
  }),
})

export const InventoryChangesInput = builder.inputType('InventoryChangesInput', {
  description: 'Fields of a household to change: what is absent stays, and null takes a field away.',
  fields: (t) => ({
    reference: t.string({ description: 'Your own name for the household.' }),
    notes: t.string({ description: notes }),
    ...householdTermFields(t),
    ...tariffFields(t),
    visits: t.field({
      type: [VisitInput],
      description: 'All visits, in place of those that there are; `addVisit` adds one.',
    }),
  }),
})

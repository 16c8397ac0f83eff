import { builder } from '../builder.ts'

export const RangeInput = builder.inputType('RangeInput', {
  description:
    'Bounds and most likely value; low <= typical <= high, in the unit of the field that holds it.',
  fields: (t) => ({
    low: t.float({ required: true, description: 'Lower bound.' }),
    typical: t.float({ required: true, description: 'Most likely value.' }),
    high: t.float({ required: true, description: 'Upper bound.' }),
  }),
})

export const ExactOrRangeInput = builder.inputType('ExactOrRangeInput', {
  description:
    'One figure, or a range where it is known only roughly; in the unit of the field that holds it.',
  isOneOf: true,
  fields: (t) => ({
    exact: t.float({ description: 'The figure.' }),
    range: t.field({ type: RangeInput, description: 'Triangular between its bounds.' }),
  }),
})

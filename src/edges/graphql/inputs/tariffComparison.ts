import { builder } from '../builder.ts'
import { householdFields } from './estimate.ts'
import { TariffChoiceInput } from './tariff.ts'

export const TariffComparisonInput = builder.inputType('TariffComparisonInput', {
  description:
    'One household, and the tariffs that it could have; null is the same as absent. Fault pointers in error extensions are JSON Pointers into this input.',
  fields: (t) => ({
    ...householdFields(t),
    tariffs: t.field({
      type: [TariffChoiceInput],
      required: true,
      description: 'The tariffs, 2 to 20, in one currency; the others are held against the first.',
    }),
  }),
})

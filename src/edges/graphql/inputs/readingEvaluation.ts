import { LIMITS } from '../../../schemas/common.ts'
import { builder } from '../builder.ts'
import { ModeEnum } from '../types/enums.ts'
import { SupplyInput } from './estimate.ts'
import { MeterInput } from './meter.ts'
import { ReadingInput } from './reading.ts'

export const ReadingEvaluationInput = builder.inputType('ReadingEvaluationInput', {
  description:
    'One reading. Only the reading is required; null is the same as absent. Fault pointers in error extensions are JSON Pointers into this input.',
  fields: (t) => ({
    reading: t.field({ type: ReadingInput, required: true, description: 'The reading.' }),
    supply: t.field({ type: SupplyInput, description: "Mains supply; the operator's setting by default." }),
    meters: t.field({ type: [MeterInput], description: 'Meters that the reading may name.' }),
    category: t.string({
      description: 'Code, name or alias of a category, for its power factor and its usual draw.',
    }),
    mode: t.field({ type: ModeEnum, description: 'Narrows the usual draw; all modes by default.' }),
    year: t.int({ description: 'Year of manufacture; narrows the usual draw.' }),
    quantity: t.int({
      description: `Devices that draw as much as the one that was read, 1 to ${LIMITS.quantity}; 1 by default.`,
    }),
    coverageProbability: t.float({
      description: 'Probability that an interval shall hold the value, 0.5 to 0.99.',
    }),
    maximumCurrentRatio: t.float({
      description: 'Crest factor of the current over the power factor, as a power analyser shows them.',
    }),
    catalogueRevision: t.int({ description: 'Catalogue revision to use; the newest by default.' }),
    overlayRevision: t.int({
      description:
        "Revision of your organisation's own figures to use; 0 for none of them; the newest by default.",
    }),
  }),
})

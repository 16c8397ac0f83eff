import { MOST_DEVICES } from '../../../schemas/verification.ts'
import { builder } from '../builder.ts'
import { DeviceInput } from './device.ts'
import { householdTermFields, momentFields, tariffFields } from './estimate.ts'
import { MeterInput } from './meter.ts'

const VerificationVisitInput = builder.inputType('VerificationVisitInput', {
  description: 'What was found at one visit.',
  fields: (t) => ({
    meters: t.field({
      type: [MeterInput],
      description: 'Meters that readings name; one of one id is the same at both visits.',
    }),
    devices: t.field({
      type: [DeviceInput],
      required: true,
      description: `The inventory, 1 to ${MOST_DEVICES} entries, each with an id; devices of one id are one device at both visits.`,
    }),
  }),
})

export const PlannedMeasureInput = builder.inputType('PlannedMeasureInput', {
  description: 'A measure that was meant to be carried out between the visits.',
  fields: (t) => ({
    name: t.string({ required: true, description: 'What was meant to be done.' }),
    deviceIds: t.stringList({
      required: true,
      description: 'Ids of its devices; a device stands in one measure.',
    }),
    expectedKwhPerYear: t.float({
      required: true,
      description: 'What it was expected to save, kWh a year, above 0.',
    }),
  }),
})

export const VerificationInput = builder.inputType('VerificationInput', {
  description:
    'Two visits to one household, and what counts for both. Null is the same as absent. Fault pointers in error extensions are JSON Pointers into this input.',
  fields: (t) => ({
    ...householdTermFields(t),
    ...momentFields(t),
    ...tariffFields(t),
    before: t.field({ type: VerificationVisitInput, required: true, description: 'The first visit.' }),
    after: t.field({ type: VerificationVisitInput, required: true, description: 'The second visit.' }),
    plan: t.field({
      type: [PlannedMeasureInput],
      description: 'Measures that were meant to be carried out in between, 1 to 100.',
    }),
  }),
})

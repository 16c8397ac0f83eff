import { LIMITS } from '../../../schemas/common.ts'
import { DRAWS } from '../../../schemas/estimateRequest.ts'
import { builder } from '../builder.ts'
import { DeviceInput } from './device.ts'
import { FactorKindEnum } from '../types/tariffEnums.ts'
import { MethodEnum } from '../types/enums.ts'
import { MeterInput } from './meter.ts'
import { TariffInput } from './tariff.ts'

export const SupplyInput = builder.inputType('SupplyInput', {
  description: 'Mains supply of the household.',
  fields: (t) => ({
    volts: t.float({ required: true, description: 'Nominal voltage, V, 90 to 260.' }),
    tolerancePercent: t.float({ required: true, description: 'Tolerance of the voltage, +-%, 0 to 20.' }),
    hertz: t.int({ required: true, description: 'Frequency, Hz: 50 or 60.' }),
  }),
})

export const EmissionFactorInput = builder.inputType('EmissionFactorInput', {
  description: "Emissions of the grid's electricity.",
  fields: (t) => ({
    kgCo2ePerKwh: t.float({ required: true, description: 'kg CO2e for each kWh generated.' }),
    gridLoss: t.float({ description: 'Share of generation lost on the way, 0 to 0.5; 0 by default.' }),
    relativeUncertainty: t.float({
      description: "Half-width of the factor's uncertainty relative to it, 0 to 0.95; exact by default.",
    }),
  }),
})

const EmissionFactorChoiceInput = builder.inputType('EmissionFactorChoiceInput', {
  description: 'A published emission factor by region and year.',
  fields: (t) => ({
    region: t.string({ required: true, description: 'Region code, such as us-camx.' }),
    year: t.int({
      description: 'The newest by default; a year without a factor gives the nearest, and says so.',
    }),
    kind: t.field({ type: FactorKindEnum, description: 'Average by default.' }),
  }),
})

type Fields = Parameters<Parameters<typeof builder.inputType>[1]['fields']>[0]

/** What holds of a household whatever is in it, without its tariff. */
export const householdTermFields = (t: Fields) => ({
  supply: t.field({ type: SupplyInput, description: "Mains supply; the operator's setting by default." }),
  emissionFactor: t.field({
    type: EmissionFactorInput,
    description: 'Emission factor; not together with `emissionFactorCode`.',
  }),
  emissionFactorCode: t.string({
    description: "Code of an emission factor that the service knows; the operator's setting by default.",
  }),
  emissionFactorFor: t.field({
    type: EmissionFactorChoiceInput,
    description: 'Emission factor by region and year, in place of its code.',
  }),
  monthlyUseKwh: t.floatList({
    description: 'Use of the whole household by month, twelve figures, kWh, in place of `annualUseKwh`.',
  }),
  annualUseKwh: t.float({ description: "The household's whole use in a year, kWh." }),
  weeksPerYear: t.float({
    description: 'Weeks that a year counts as, above 0 to 53; 365/7 unless the operator set it.',
  }),
  coverageProbability: t.float({
    description: 'Probability that an interval shall hold the value, 0.5 to 0.99.',
  }),
})

/** What holds of its tariff. */
export const tariffFields = (t: Fields) => ({
  tariff: t.field({ type: TariffInput, description: 'Price structure; not together with `tariffCode`.' }),
  tariffCode: t.string({
    description: "Code of a tariff that the service knows; the operator's setting by default.",
  }),
})

/** What was found in a household. */
export const inventoryFields = (t: Fields) => ({
  meters: t.field({ type: [MeterInput], description: 'Meters that readings name.' }),
  devices: t.field({
    type: [DeviceInput],
    required: true,
    description: `The inventory, 1 to ${LIMITS.devices} entries.`,
  }),
})

/** Which figures are used, where not the newest. */
export const momentFields = (t: Fields) => ({
  catalogueRevision: t.int({ description: 'Catalogue revision to use; the newest by default.' }),
  overlayRevision: t.int({
    description:
      "Revision of your organisation's own figures to use; 0 for none of them; the newest by default.",
  }),
  referenceRevision: t.int({
    description: 'Revision of tariffs and emission factors to use; the newest by default.',
  }),
  tariffDate: t.string({
    description: 'Day that the tariff should hold on, YYYY-MM-DD; where it does not, a warning says so.',
  }),
})

/** A household without its tariff. */
export const householdFields = (t: Fields) => ({
  ...householdTermFields(t),
  ...momentFields(t),
  ...inventoryFields(t),
})

export const HouseholdInput = builder.inputType('HouseholdInput', {
  description:
    'One household. Only the devices and their categories are required; null is the same as absent.',
  fields: (t) => ({
    ...householdFields(t),
    ...tariffFields(t),
  }),
})

export const EstimateInput = builder.inputType('EstimateInput', {
  description:
    'One household, and how its sums are worked out. Only the devices and their categories are required; null is the same as absent. Fault pointers in error extensions are JSON Pointers into this input.',
  fields: (t) => ({
    ...householdFields(t),
    ...tariffFields(t),
    method: t.field({
      type: MethodEnum,
      description: 'How sums of uncertain figures are worked out; CONVOLUTION by default.',
    }),
    draws: t.int({
      description: `Draws of MONTE_CARLO, ${DRAWS.least} to ${DRAWS.most}; times modes of devices at most ${DRAWS.together}, and by default as many as that allows.`,
    }),
    expectedWidths: t.boolean({
      description: 'Whether to work out `expectedWidths` of the answer; false by default.',
    }),
    seed: t.int({
      description: 'Seed of MONTE_CARLO, 0 or more, 1 by default; the same seed gives the same figures.',
    }),
  }),
})

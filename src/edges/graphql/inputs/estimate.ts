import { LIMITS } from '../../../schemas/common.ts'
import { builder } from '../builder.ts'
import { DeviceInput } from './device.ts'
import { MeterInput } from './meter.ts'

const SupplyInput = builder.inputType('SupplyInput', {
  description: 'Mains supply of the household.',
  fields: (t) => ({
    volts: t.float({ required: true, description: 'Nominal voltage, V, 90 to 260.' }),
    tolerancePercent: t.float({ required: true, description: 'Tolerance of the voltage, +-%, 0 to 20.' }),
    hertz: t.int({ required: true, description: 'Frequency, Hz: 50 or 60.' }),
  }),
})

const FlatTariffInput = builder.inputType('FlatTariffInput', {
  description: 'One price for every kWh.',
  fields: (t) => ({
    currency: t.string({ required: true, description: 'ISO 4217 code, such as EUR.' }),
    pricePerKwh: t.float({ required: true, description: 'Price of one kWh, in units of the currency.' }),
    relativeUncertainty: t.float({
      description:
        "Half-width of the price's uncertainty relative to the price, 0 to 0.95; exact by default.",
    }),
  }),
})

const TariffInput = builder.inputType('TariffInput', {
  description: 'Price structure of energy: exactly one kind.',
  isOneOf: true,
  fields: (t) => ({
    flat: t.field({ type: FlatTariffInput, description: 'One price for every kWh.' }),
  }),
})

const EmissionFactorInput = builder.inputType('EmissionFactorInput', {
  description: "Emissions of the grid's electricity.",
  fields: (t) => ({
    kgCo2ePerKwh: t.float({ required: true, description: 'kg CO2e for each kWh generated.' }),
    gridLoss: t.float({ description: 'Share of generation lost on the way, 0 to 0.5; 0 by default.' }),
    relativeUncertainty: t.float({
      description: "Half-width of the factor's uncertainty relative to it, 0 to 0.95; exact by default.",
    }),
  }),
})

export const EstimateInput = builder.inputType('EstimateInput', {
  description:
    'One household. Only the devices and their categories are required; null is the same as absent. Fault pointers in error extensions are JSON Pointers into this input.',
  fields: (t) => ({
    supply: t.field({ type: SupplyInput, description: "Mains supply; the operator's setting by default." }),
    tariff: t.field({ type: TariffInput, description: 'Price structure; not together with `tariffCode`.' }),
    tariffCode: t.string({
      description: "Code of a tariff that the service knows; the operator's setting by default.",
    }),
    emissionFactor: t.field({
      type: EmissionFactorInput,
      description: 'Emission factor; not together with `emissionFactorCode`.',
    }),
    emissionFactorCode: t.string({
      description: "Code of an emission factor that the service knows; the operator's setting by default.",
    }),
    annualUseKwh: t.float({ description: "The household's whole use in a year, kWh." }),
    weeksPerYear: t.float({
      description: 'Weeks that a year counts as, above 0 to 53; 365/7 unless the operator set it.',
    }),
    coverageProbability: t.float({
      description: 'Probability that an interval shall hold the value, 0.5 to 0.99.',
    }),
    catalogueRevision: t.int({ description: 'Catalogue revision to use; the newest by default.' }),
    meters: t.field({ type: [MeterInput], description: 'Meters that readings name.' }),
    devices: t.field({
      type: [DeviceInput],
      required: true,
      description: `The inventory, 1 to ${LIMITS.devices} entries.`,
    }),
  }),
})

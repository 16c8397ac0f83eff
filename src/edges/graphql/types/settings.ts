import type { EmissionFactor } from '../../../core/emissions/emissionFactor.ts'
import type { Used } from '../../../core/estimate/estimate.ts'
import type { Supply } from '../../../core/inventory/household.ts'
import { builder } from '../builder.ts'
import { TariffType } from './tariff.ts'

export const SupplyType = builder.objectRef<Supply>('Supply').implement({
  description: 'Mains supply of the household.',
  fields: (t) => ({
    volts: t.exposeFloat('volts', { description: 'Nominal voltage, V.' }),
    tolerancePercent: t.exposeFloat('tolerancePercent', { description: 'Tolerance of the voltage, +-%.' }),
    hertz: t.exposeInt('hertz', { description: 'Frequency, Hz.' }),
  }),
})

export const EmissionFactorType = builder.objectRef<EmissionFactor>('EmissionFactor').implement({
  description: "Emissions of a grid's electricity.",
  fields: (t) => ({
    kgCo2ePerKwh: t.exposeFloat('kgCo2ePerKwh', { description: 'kg CO2e for each kWh generated.' }),
    gridLoss: t.exposeFloat('gridLoss', {
      nullable: true,
      description: 'Share of generation lost on the way, 0 to below 1; null where none was given.',
    }),
    relativeUncertainty: t.exposeFloat('relativeUncertainty', {
      nullable: true,
      description: "Half-width of the factor's uncertainty relative to it, 0 to 1; null is exact.",
    }),
  }),
})

export const UsedType = builder.objectRef<Used>('Used').implement({
  description:
    'What the estimate was worked out with: the values sent, and for the rest what the service filled in.',
  fields: (t) => ({
    supply: t.expose('supply', { type: SupplyType, description: 'Mains supply.' }),
    tariff: t.expose('tariff', { type: TariffType, description: 'Price structure.' }),
    tariffSource: t.exposeString('tariffSource', { description: 'Where the price is from.' }),
    standbyPricePerKwh: t.exposeFloat('standbyPricePerKwh', {
      description: 'Mean cost of a kWh of standby, taxes included, in units of the currency.',
    }),
    priceBasis: t.exposeString('priceBasis', {
      description: 'How that price came about, and how devices share the total.',
    }),
    emissionFactor: t.expose('emissionFactor', { type: EmissionFactorType, description: 'Emission factor.' }),
    emissionFactorSource: t.exposeString('emissionFactorSource', {
      description: 'Where the factor is from.',
    }),
    weeksPerYear: t.exposeFloat('weeksPerYear', { description: 'Weeks that a year was counted as.' }),
    annualUseKwh: t.exposeFloat('annualUseKwh', {
      nullable: true,
      description: "The household's whole use in a year, kWh; null where it was not given.",
    }),
    monthlyUseKwh: t.floatList({
      nullable: true,
      complexity: 1,
      description: "The household's use by month, January first, kWh; null where it was not given.",
      resolve: ({ monthlyUseKwh }) => monthlyUseKwh,
    }),
    methodVersion: t.exposeString('methodVersion', {
      description:
        'Version of the estimation method; where sums were drawn, how many draws and which seed, too.',
    }),
  }),
})

import type { ComparedTariff, TariffComparison } from '../../../core/estimate/tariffComparison.ts'
import { builder } from '../builder.ts'
import { EXPECTED_LENGTH } from '../limits.ts'
import { IntervalType } from './interval.ts'
import { MoneyIntervalType } from './moneyInterval.ts'
import { WarningType } from './warning.ts'

const ComparedTariffType = builder.objectRef<ComparedTariff>('ComparedTariff').implement({
  description: "What the household's standby costs under one tariff.",
  fields: (t) => ({
    tariffCode: t.exposeString('tariffCode', {
      nullable: true,
      description: 'Code; null where the caller gave the tariff itself.',
    }),
    name: t.exposeString('name', {
      nullable: true,
      description: 'Name; null where the caller gave the tariff.',
    }),
    source: t.exposeString('source', { description: 'Where the price is from.' }),
    sampleData: t.exposeBoolean('sampleData', { description: 'True where the price is invented.' }),
    standbyPricePerKwh: t.exposeFloat('standbyPricePerKwh', {
      description: 'Mean cost of a kWh of standby, taxes included.',
    }),
    priceBasis: t.exposeString('priceBasis', { description: 'How that price came about.' }),
    costPerYear: t.expose('costPerYear', { type: MoneyIntervalType, description: 'Standby of all devices.' }),
    differencePerYear: t.expose('differencePerYear', {
      type: MoneyIntervalType,
      description: 'Less that of the first tariff, for the same energy.',
    }),
    annualBill: t.exposeString('annualBill', {
      nullable: true,
      description: "All bills of the household's year, decimal text; null where its use is not known.",
    }),
    warnings: t.field({
      type: [WarningType],
      description: 'What the reader of this cost must know.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.warnings },
      resolve: ({ warnings }) => warnings,
    }),
  }),
})

export const TariffComparisonType = builder.objectRef<TariffComparison>('TariffComparison').implement({
  description: "What one household's standby costs under several tariffs.",
  fields: (t) => ({
    catalogueRevision: t.exposeInt('catalogueRevision', { description: 'Catalogue revision that was used.' }),
    referenceRevision: t.exposeInt('referenceRevision', {
      description:
        'Revision of tariffs and emission factors that was used; ask for it to get the same again.',
    }),
    overlayRevision: t.exposeInt('overlayRevision', {
      description: "Revision of your organisation's own figures that lay over it; 0 where there were none.",
    }),
    coverageProbability: t.exposeFloat('coverageProbability', {
      description: 'Probability that an interval holds the value, 0 to 1.',
    }),
    currency: t.exposeString('currency', { description: 'ISO 4217 code of every cost.' }),
    sampleData: t.exposeBoolean('sampleData', {
      description: 'True where any figure that went in is invented.',
    }),
    annualUseKwh: t.exposeFloat('annualUseKwh', {
      nullable: true,
      description: "The household's whole use in a year, kWh; null where it was not given.",
    }),
    methodVersion: t.exposeString('methodVersion', { description: 'Version of the estimation method.' }),
    energyKwhPerYear: t.expose('energyKwhPerYear', {
      type: IntervalType,
      description: 'Energy of all devices, kWh a year.',
    }),
    tariffs: t.field({
      type: [ComparedTariffType],
      description: 'In the order sent.',
      resolve: ({ tariffs }) => tariffs,
    }),
  }),
})

import type { DeviceEstimate } from '../../../core/estimate/estimate.ts'
import { builder } from '../builder.ts'
import { EXPECTED_LENGTH } from '../limits.ts'
import { KeepPoweredType } from './common.ts'
import { CatalogueLayerEnum, FlagEnum } from './enums.ts'
import { IntervalType } from './interval.ts'
import { MoneyIntervalType } from './moneyInterval.ts'
import { ModeEstimateType } from './modeEstimate.ts'
import { WarningType } from './warning.ts'

export const DeviceEstimateType = builder.objectRef<DeviceEstimate>('DeviceEstimate').implement({
  description:
    'What one entry of the inventory draws. Its id is unique within its estimate only: clients that cache objects by id must not do so for this type.',
  fields: (t) => ({
    id: t.exposeString('id', {
      description: 'Id that the caller gave the device, or the one that it was given.',
    }),
    label: t.exposeString('label', { nullable: true, description: "The caller's own name for the device." }),
    category: t.exposeString('category', { description: 'Code of the category that was found.' }),
    categoryName: t.exposeString('categoryName', { description: 'Name of the category.' }),
    catalogueLayer: t.expose('catalogueLayer', {
      type: CatalogueLayerEnum,
      description: 'Whose figures of the category went in.',
    }),
    quantity: t.exposeInt('quantity', {
      description: 'Number of such devices; all figures are for all of them.',
    }),
    confidence: t.expose('confidence', {
      type: FlagEnum,
      description: 'The weakest flag among the modes that make up the energy.',
    }),
    sampleData: t.exposeBoolean('sampleData', { description: 'True where invented sample data went in.' }),
    keepPowered: t.field({
      type: KeepPoweredType,
      nullable: true,
      description: 'Why the device must stay powered; null where it need not.',
      resolve: ({ keepPowered }) => keepPowered,
    }),
    powerW: t.expose('powerW', {
      type: IntervalType,
      description: 'Power averaged over the hours counted, W.',
    }),
    energyKwhPerYear: t.expose('energyKwhPerYear', {
      type: IntervalType,
      description: 'Energy, kWh a year.',
    }),
    costPerYear: t.expose('costPerYear', {
      type: MoneyIntervalType,
      description: "Cost a year, in units of the estimate's currency.",
    }),
    emissionsKgCo2ePerYear: t.expose('emissionsKgCo2ePerYear', {
      type: IntervalType,
      description: 'Emissions, kg CO2e a year.',
    }),
    shareOfTotal: t.exposeFloat('shareOfTotal', {
      description: "Share of the total's expected energy, 0 to 1.",
    }),
    modes: t.field({
      type: [ModeEstimateType],
      description: 'The modes that were counted.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.modes },
      resolve: ({ modes }) => modes,
    }),
    warnings: t.field({
      type: [WarningType],
      description: "What the reader of this device's figures must know.",
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.warnings },
      resolve: ({ warnings }) => warnings,
    }),
  }),
})

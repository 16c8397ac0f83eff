import type {
  MeanPrice,
  RungEstimate,
  StockEstimate,
  StockFigures,
  StockItemShare,
} from '../../../core/population/stock.ts'
import { builder } from '../builder.ts'
import { EXPECTED_LENGTH } from '../limits.ts'
import { RangeType } from './common.ts'
import { CatalogueLayerEnum, KeepPoweredReasonEnum } from './enums.ts'
import { IntervalType } from './interval.ts'
import { UncertaintyOriginEnum } from './populationEnums.ts'
import { EmissionFactorType } from './settings.ts'
import { CautionType, WarningType } from './warning.ts'

const FIGURES = {
  powerW: 'Average power over the whole year, W.',
  powerMw: 'The same, MW.',
  energyKwhPerYear: 'Energy, kWh a year.',
  energyGwhPerYear: 'The same, GWh a year.',
  costPerYear: "Cost a year, in the price's currency.",
  emissionsKgCo2ePerYear: 'Emissions, kg CO2e a year.',
  emissionsTonnesCo2ePerYear: 'The same, t CO2e a year.',
} as const satisfies Readonly<Record<keyof StockFigures, string>>

const StockFiguresType = builder.objectRef<StockFigures>('StockFigures').implement({
  description: 'Average power over the year, and what a year comes to.',
  fields: (t) => ({
    powerW: t.expose('powerW', { type: IntervalType, description: FIGURES.powerW }),
    powerMw: t.expose('powerMw', { type: IntervalType, description: FIGURES.powerMw }),
    energyKwhPerYear: t.expose('energyKwhPerYear', {
      type: IntervalType,
      description: FIGURES.energyKwhPerYear,
    }),
    energyGwhPerYear: t.expose('energyGwhPerYear', {
      type: IntervalType,
      description: FIGURES.energyGwhPerYear,
    }),
    costPerYear: t.expose('costPerYear', { type: IntervalType, description: FIGURES.costPerYear }),
    emissionsKgCo2ePerYear: t.expose('emissionsKgCo2ePerYear', {
      type: IntervalType,
      description: FIGURES.emissionsKgCo2ePerYear,
    }),
    emissionsTonnesCo2ePerYear: t.expose('emissionsTonnesCo2ePerYear', {
      type: IntervalType,
      description: FIGURES.emissionsTonnesCo2ePerYear,
    }),
  }),
})

const PerHomeType = builder.objectRef<RungEstimate['perHome']>('StockPerHome').implement({
  description: 'The mean over the homes.',
  fields: (t) => ({
    powerW: t.expose('powerW', { type: IntervalType, description: FIGURES.powerW }),
    energyKwhPerYear: t.expose('energyKwhPerYear', {
      type: IntervalType,
      description: FIGURES.energyKwhPerYear,
    }),
  }),
})

const StockRungType = builder.objectRef<RungEstimate>('StockRung').implement({
  description: 'A number of homes, and what they draw.',
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Name, as it was sent.' }),
    homes: t.exposeFloat('homes', { description: 'Number of homes.' }),
    powerW: t.expose('powerW', { type: IntervalType, description: FIGURES.powerW }),
    powerMw: t.expose('powerMw', { type: IntervalType, description: FIGURES.powerMw }),
    energyKwhPerYear: t.expose('energyKwhPerYear', {
      type: IntervalType,
      description: FIGURES.energyKwhPerYear,
    }),
    energyGwhPerYear: t.expose('energyGwhPerYear', {
      type: IntervalType,
      description: FIGURES.energyGwhPerYear,
    }),
    costPerYear: t.expose('costPerYear', { type: IntervalType, description: FIGURES.costPerYear }),
    emissionsKgCo2ePerYear: t.expose('emissionsKgCo2ePerYear', {
      type: IntervalType,
      description: FIGURES.emissionsKgCo2ePerYear,
    }),
    emissionsTonnesCo2ePerYear: t.expose('emissionsTonnesCo2ePerYear', {
      type: IntervalType,
      description: FIGURES.emissionsTonnesCo2ePerYear,
    }),
    perHome: t.expose('perHome', { type: PerHomeType, description: 'The mean over the homes.' }),
    sharedVarianceShare: t.exposeFloat('sharedVarianceShare', {
      description:
        'Share of the variance that is common to all homes, and does not shrink with their number.',
    }),
    cut: t.expose('cut', {
      type: StockFiguresType,
      nullable: true,
      description: 'What cutting `cutShare` is worth; null where none was asked for.',
    }),
  }),
})

const StockItemType = builder.objectRef<StockItemShare>('StockItem').implement({
  description: 'One kind of device, as it was counted.',
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Name.' }),
    category: t.exposeString('category', {
      nullable: true,
      description: 'Code of the category; null for a draw of its own.',
    }),
    catalogueLayer: t.expose('catalogueLayer', {
      type: CatalogueLayerEnum,
      nullable: true,
      description: 'Whose figures of the category went in; null for a draw of its own.',
    }),
    keepPowered: t.expose('keepPowered', {
      type: KeepPoweredReasonEnum,
      nullable: true,
      description: 'Why it must stay powered; null where it need not.',
    }),
    ownership: t.expose('ownership', {
      type: RangeType,
      description: 'Share of homes that have at least one, 0 to 1.',
    }),
    countPerOwner: t.exposeFloat('countPerOwner', {
      description: 'Mean number in a home that has any.',
    }),
    meanDrawUncertainty: t.exposeFloat('meanDrawUncertainty', {
      description: 'Half-width of what is not known of the mean draw, relative to it.',
    }),
    meanDrawUncertaintyFrom: t.expose('meanDrawUncertaintyFrom', {
      type: UncertaintyOriginEnum,
      description: 'Who set it.',
    }),
    energyKwhPerYearPerHome: t.exposeFloat('energyKwhPerYearPerHome', {
      description: 'Expected energy, kWh a year, over all homes with and without.',
    }),
    shareOfTotal: t.exposeFloat('shareOfTotal', { description: "Share of the total's expected energy." }),
  }),
})

const MeanPriceType = builder.objectRef<MeanPrice>('MeanPrice').implement({
  description: 'What a kWh costs the homes on average, all in.',
  fields: (t) => ({
    currency: t.exposeString('currency', { description: 'ISO 4217 code.' }),
    pricePerKwh: t.exposeFloat('pricePerKwh', { description: 'Price of one kWh, in units of the currency.' }),
    relativeUncertainty: t.exposeFloat('relativeUncertainty', {
      nullable: true,
      description: "Half-width of the price's uncertainty relative to it, 0 to 1; null is exact.",
    }),
  }),
})

const StockUsedType = builder.objectRef<StockEstimate['used']>('StockUsed').implement({
  description: 'What the estimate was worked out with.',
  fields: (t) => ({
    price: t.expose('price', { type: MeanPriceType, description: 'Mean price.' }),
    priceSource: t.exposeString('priceSource', { description: 'Where the price is from.' }),
    emissionFactor: t.expose('emissionFactor', { type: EmissionFactorType, description: 'Emission factor.' }),
    emissionFactorSource: t.exposeString('emissionFactorSource', {
      description: 'Where the factor is from.',
    }),
    weeksPerYear: t.exposeFloat('weeksPerYear', { description: 'Weeks that a year was counted as.' }),
  }),
})

export const StockEstimateType = builder.objectRef<StockEstimate>('StockEstimate').implement({
  description: 'What many homes draw, by ownership, count, draw and hours.',
  fields: (t) => ({
    methodVersion: t.exposeString('methodVersion', { description: 'Version of the estimation method.' }),
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
    sampleData: t.exposeBoolean('sampleData', {
      description: 'True where any draw that went in is invented sample data.',
    }),
    used: t.expose('used', { type: StockUsedType, description: 'What it was worked out with.' }),
    items: t.field({
      type: [StockItemType],
      description: 'Kinds of device, as they were counted.',
      resolve: ({ items }) => items,
    }),
    switchableShare: t.exposeFloat('switchableShare', {
      description: 'Share of the energy of devices that need not stay powered.',
    }),
    cutShare: t.exposeFloat('cutShare', {
      nullable: true,
      description: 'Share that is cut; null where none was asked for.',
    }),
    ladder: t.field({
      type: [StockRungType],
      description: 'From one home up, as it was sent.',
      resolve: ({ ladder }) => ladder,
    }),
    assumptions: t.stringList({
      description: 'What the model rests on, a sentence each.',
      resolve: ({ assumptions }) => assumptions,
    }),
    formulas: t.stringList({
      description: 'The model in formulas.',
      resolve: ({ formulas }) => formulas,
    }),
    warnings: t.field({
      type: [WarningType],
      description: 'What the reader of these figures must know.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.warnings },
      resolve: ({ warnings }) => warnings,
    }),
    cautions: t.field({
      type: [CautionType],
      description: 'Safety statements.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.cautions },
      resolve: ({ cautions }) => cautions,
    }),
  }),
})

import type { Estimate, ExpectedWidth, NextReading, TotalEstimate } from '../../../core/estimate/estimate.ts'
import { builder } from '../builder.ts'
import { EXPECTED_LENGTH } from '../limits.ts'
import { DeviceEstimateType } from './deviceEstimate.ts'
import { ModeEnum, TotalFlagEnum } from './enums.ts'
import { IntervalType } from './interval.ts'
import { MoneyIntervalType } from './moneyInterval.ts'
import { UsedType } from './settings.ts'
import { CautionType, WarningType } from './warning.ts'

const share = 'Share of the expected energy, 0 to 1.'

const ConfidenceSharesType = builder
  .objectRef<TotalEstimate['confidenceShares']>('ConfidenceShares')
  .implement({
    description: 'How the expected energy of the total divides into flags.',
    fields: (t) => ({
      measured: t.exposeFloat('measured', { description: share }),
      partlyMeasured: t.exposeFloat('partly-measured', { description: share }),
      declared: t.exposeFloat('declared', { description: share }),
      assumed: t.exposeFloat('assumed', { description: share }),
    }),
  })

export const TotalEstimateType = builder.objectRef<TotalEstimate>('TotalEstimate').implement({
  description: 'All devices together.',
  fields: (t) => ({
    powerW: t.expose('powerW', { type: IntervalType, description: 'Power averaged over the whole year, W.' }),
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
    confidence: t.expose('confidence', {
      type: TotalFlagEnum,
      description: 'How sure the origin of the energy is.',
    }),
    confidenceShares: t.expose('confidenceShares', {
      type: ConfidenceSharesType,
      description: 'Share of the energy under each flag.',
    }),
  }),
})

const NextReadingType = builder.objectRef<NextReading>('NextReading').implement({
  description: 'A reading that would make the total surer.',
  fields: (t) => ({
    deviceId: t.exposeString('deviceId', { description: 'Id of the device, as in `devices`.' }),
    mode: t.expose('mode', { type: ModeEnum, description: 'Mode in which to read it.' }),
    varianceShare: t.exposeFloat('varianceShare', {
      description: "Share of the total's variance that a wattmeter reading there would remove, 0 to 1.",
    }),
  }),
})

const ReadingPlaceType = builder.objectRef<ExpectedWidth['at'][number]>('ReadingPlace').implement({
  description: 'Where to take a reading.',
  fields: (t) => ({
    deviceId: t.exposeString('deviceId', { description: 'Id of the device, as in `devices`.' }),
    mode: t.expose('mode', { type: ModeEnum, description: 'Mode in which to read it.' }),
  }),
})

const ExpectedWidthType = builder.objectRef<ExpectedWidth>('ExpectedWidth').implement({
  description:
    'How wide the interval of the total energy would be after the best readings with one plug-in wattmeter, each chosen after those before it.',
  fields: (t) => ({
    readings: t.exposeInt('readings', {
      description: 'How many: 1, 2 and 5; fewer where no more are worth taking.',
    }),
    at: t.field({
      type: [ReadingPlaceType],
      description: 'Where they would be taken, best first.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.readingPlaces },
      resolve: ({ at }) => at,
    }),
    widthKwhPerYear: t.exposeFloat('widthKwhPerYear', { description: 'High less low, kWh a year.' }),
    widthShare: t.exposeFloat('widthShare', { description: 'That width by the present one.' }),
  }),
})

export const EstimateType = builder.objectRef<Estimate>('Estimate').implement({
  description:
    'What the devices of one household draw while nobody uses them. The same request gives the same answer.',
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
      description: 'True where any figure that went in is invented sample data.',
    }),
    used: t.expose('used', {
      type: UsedType,
      description: 'Settings that the estimate was worked out with.',
    }),
    devices: t.field({
      type: [DeviceEstimateType],
      description: 'Each entry of the inventory, in the order sent.',
      resolve: ({ devices }) => devices,
    }),
    total: t.expose('total', { type: TotalEstimateType, description: 'All devices together.' }),
    nextReadings: t.field({
      type: [NextReadingType],
      description: 'What to read next, most useful first.',
      resolve: ({ nextReadings }) => nextReadings,
    }),
    expectedWidths: t.field({
      type: [ExpectedWidthType],
      nullable: true,
      description: 'After the best one, two and five readings; null unless the input asks for it.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.expectedWidths },
      resolve: ({ expectedWidths }) => expectedWidths,
    }),
    warnings: t.field({
      type: [WarningType],
      description: 'What the reader of the whole estimate must know.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.warnings },
      resolve: ({ warnings }) => warnings,
    }),
    cautions: t.field({
      type: [CautionType],
      description: 'Safety statements for the work that the answer suggests.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.cautions },
      resolve: ({ cautions }) => cautions,
    }),
  }),
})

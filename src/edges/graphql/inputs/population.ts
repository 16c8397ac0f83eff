import { MOST_ITEMS, MOST_RUNGS } from '../../../schemas/population.ts'
import { MOST_SURVEYED } from '../../../schemas/survey.ts'
import { builder } from '../builder.ts'
import { ModeEnum } from '../types/enums.ts'
import { StandardErrorFormEnum } from '../types/populationEnums.ts'
import { EmissionFactorInput } from './estimate.ts'
import { ExactOrRangeInput, RangeInput } from './range.ts'

const StockModeInput = builder.inputType('StockModeInput', {
  description: 'One mode of a kind of device.',
  fields: (t) => ({
    mode: t.field({ type: ModeEnum, required: true, description: 'Mode.' }),
    hoursPerWeek: t.float({ description: "Hours a week, 0 to 168; the catalogue's default." }),
  }),
})

const StockItemInput = builder.inputType('StockItemInput', {
  description:
    'One kind of device in the homes: of the catalogue by `category`, or by `name` with a draw of its own.',
  fields: (t) => ({
    category: t.string({ description: 'Code, name or alias of a category.' }),
    year: t.int({ description: 'Year of manufacture.' }),
    modes: t.field({
      type: [StockModeInput],
      description: 'All modes of the category with their default hours where left out.',
    }),
    name: t.string({ description: 'Name, for a draw of its own.' }),
    drawW: t.field({
      type: RangeInput,
      description: '5th, 50th and 95th percentile over devices in use, W; with `name`.',
    }),
    hoursPerWeek: t.float({ description: 'Hours a week, 0 to 168; with `name`.' }),
    ownership: t.field({
      type: ExactOrRangeInput,
      required: true,
      description: 'Share of homes that have at least one, 0 to 1; a range is the same for all homes.',
    }),
    countPerOwner: t.float({
      description: "Mean number in a home that has any; the category's default quantity, or 1.",
    }),
    meanDrawUncertainty: t.float({
      description:
        'Half-width of what is not known of the mean draw, relative to it, 0 to 0.95; by provenance where left out.',
    }),
  }),
})

const RungInput = builder.inputType('RungInput', {
  description: 'A number of homes with a name.',
  fields: (t) => ({
    name: t.string({ required: true, description: 'Name, such as that of a street or a region.' }),
    homes: t.float({ required: true, description: 'Whole number of homes, 1 to 10,000,000,000.' }),
  }),
})

const MeanPriceInput = builder.inputType('MeanPriceInput', {
  description: 'What a kWh costs the homes on average, all in.',
  fields: (t) => ({
    currency: t.string({ required: true, description: 'ISO 4217 code, such as EUR.' }),
    pricePerKwh: t.float({ required: true, description: 'Price of one kWh, in units of the currency.' }),
    relativeUncertainty: t.float({
      description: "Half-width of the price's uncertainty relative to it, 0 to 0.95; exact by default.",
    }),
  }),
})

export const StockInput = builder.inputType('StockInput', {
  description:
    'Kinds of device by ownership, count, draw and hours. Null is the same as absent. Fault pointers in error extensions are JSON Pointers into this input.',
  fields: (t) => ({
    items: t.field({
      type: [StockItemInput],
      required: true,
      description: `Kinds of device, 1 to ${MOST_ITEMS}.`,
    }),
    ladder: t.field({
      type: [RungInput],
      required: true,
      description: `From one home to a country, 1 to ${MOST_RUNGS} entries.`,
    }),
    cutShare: t.float({ description: 'Share of the energy that is cut, such as 0.3.' }),
    price: t.field({
      type: MeanPriceInput,
      description: "The operator's by default, where it is one price.",
    }),
    emissionFactor: t.field({
      type: EmissionFactorInput,
      description: 'Emission factor; not together with `emissionFactorCode`.',
    }),
    emissionFactorCode: t.string({
      description: "Code of an emission factor that the service knows; the operator's setting by default.",
    }),
    weeksPerYear: t.float({ description: 'Weeks that a year counts as, above 0 to 53.' }),
    coverageProbability: t.float({
      description: 'Probability that an interval shall hold the value, 0.5 to 0.99.',
    }),
    catalogueRevision: t.int({ description: 'Catalogue revision to use; the newest by default.' }),
    referenceRevision: t.int({
      description: 'Revision of tariffs and emission factors to use; the newest by default.',
    }),
    overlayRevision: t.int({
      description:
        "Revision of your organisation's own figures to use; 0 for none of them; the newest by default.",
    }),
  }),
})

const StratumAuxiliaryInput = builder.inputType('StratumAuxiliaryInput', {
  description: 'The auxiliary quantity of a summarised stratum.',
  fields: (t) => ({
    mean: t.float({ required: true, description: 'Mean.' }),
    variance: t.float({ required: true, description: 'Variance, divisor n - 1.' }),
    covariance: t.float({ required: true, description: 'Covariance with the value, divisor n - 1.' }),
  }),
})

const StratumSummaryInput = builder.inputType('StratumSummaryInput', {
  description: 'The sample of a stratum in summary.',
  fields: (t) => ({
    homes: t.float({ required: true, description: 'Sampled homes, a whole number.' }),
    mean: t.float({ required: true, description: 'Mean of the values.' }),
    variance: t.float({ required: true, description: 'Variance of the values, divisor n - 1.' }),
    auxiliary: t.field({ type: StratumAuxiliaryInput, description: 'For a ratio estimate.' }),
  }),
})

const SurveyStratumInput = builder.inputType('SurveyStratumInput', {
  description: 'A part of the population that was sampled on its own.',
  fields: (t) => ({
    name: t.string({ required: true, description: 'Name within this request.' }),
    homes: t.float({ description: 'Homes of the whole stratum, a whole number.' }),
    clusters: t.float({
      description: 'Clusters of the whole stratum, a whole number, where whole clusters were drawn.',
    }),
    sample: t.field({ type: StratumSummaryInput, description: 'In place of single homes.' }),
  }),
})

const SurveyedHomeInput = builder.inputType('SurveyedHomeInput', {
  description: 'One surveyed home.',
  fields: (t) => ({
    stratum: t.string({ description: 'Stratum that it is of; may be left out where there is only one.' }),
    cluster: t.string({ description: 'Cluster that it is of.' }),
    value: t.float({ required: true, description: 'What was surveyed, in `unit`.' }),
    auxiliary: t.float({ description: 'A quantity whose total over all homes is known.' }),
    domain: t.string({ description: 'A group to have figures of its own.' }),
  }),
})

const SurveyRatioInput = builder.inputType('SurveyRatioInput', {
  description: 'Total by a quantity whose total is known.',
  fields: (t) => ({
    auxiliaryTotal: t.float({ required: true, description: 'Its total over all homes.' }),
    standardErrorForm: t.field({
      type: StandardErrorFormEnum,
      description: 'Form of the standard error; with the mean factor by default.',
    }),
  }),
})

export const SurveyInput = builder.inputType('SurveyInput', {
  description:
    'Surveyed homes, drawn by strata, singly or in whole clusters. Null is the same as absent. Fault pointers in error extensions are JSON Pointers into this input.',
  fields: (t) => ({
    unit: t.string({ description: 'Unit of the values, such as kWh/yr; repeated in the answer.' }),
    strata: t.field({ type: [SurveyStratumInput], required: true, description: 'All strata.' }),
    homes: t.field({
      type: [SurveyedHomeInput],
      description: `The surveyed homes, at most ${MOST_SURVEYED}.`,
    }),
    ratio: t.field({ type: SurveyRatioInput, description: 'For a ratio estimate of the total.' }),
    finitePopulationCorrection: t.boolean({ description: 'True by default.' }),
    coverageProbability: t.float({
      description: 'Probability that an interval shall hold the value, 0.5 to 0.99.',
    }),
  }),
})

import type { SurveyEstimate, SurveyFigure } from '../../../core/population/survey.ts'
import { builder } from '../builder.ts'
import { EXPECTED_LENGTH } from '../limits.ts'
import { StandardErrorFormEnum } from './populationEnums.ts'
import { CautionType, WarningType } from './warning.ts'

const SurveyFigureType = builder.objectRef<SurveyFigure>('SurveyFigure').implement({
  description: 'An estimate with its standard error and t-interval; not cut off at zero.',
  fields: (t) => ({
    expected: t.exposeFloat('expected', { description: 'Estimate.' }),
    standardError: t.exposeFloat('standardError', { description: 'Standard error.' }),
    low: t.exposeFloat('low', { description: 'Lower end of the t-interval.' }),
    high: t.exposeFloat('high', { description: 'Upper end of the t-interval.' }),
  }),
})

const SurveyStratumType = builder
  .objectRef<SurveyEstimate['strata'][number]>('SurveyStratumEstimate')
  .implement({
    description: 'One stratum.',
    fields: (t) => ({
      name: t.exposeString('name', { description: 'Name, as it was sent.' }),
      sampledHomes: t.exposeFloat('sampledHomes', { description: 'Sampled homes.' }),
      sampledUnits: t.exposeFloat('sampledUnits', {
        description: 'Sampled clusters where clusters were drawn, else homes.',
      }),
      populationUnits: t.exposeFloat('populationUnits', { description: 'Such units in the whole stratum.' }),
      total: t.expose('total', { type: SurveyFigureType, description: 'Total of the stratum.' }),
    }),
  })

const SurveyDomainType = builder.objectRef<SurveyEstimate['domains'][number]>('SurveyDomain').implement({
  description: 'A group of homes with figures of its own.',
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Name, as it was sent.' }),
    sampledHomes: t.exposeInt('sampledHomes', { description: 'Sampled homes of the group.' }),
    homes: t.expose('homes', { type: SurveyFigureType, description: 'Homes of the group, estimated.' }),
    total: t.expose('total', { type: SurveyFigureType, description: 'Total of the group.' }),
    mean: t.expose('mean', { type: SurveyFigureType, description: 'Mean of the group.' }),
  }),
})

const SurveyRatioType = builder.objectRef<NonNullable<SurveyEstimate['ratio']>>('SurveyRatio').implement({
  description: 'Total by a quantity whose total is known.',
  fields: (t) => ({
    ratio: t.exposeFloat('ratio', { description: 'Value over auxiliary quantity.' }),
    auxiliaryTotal: t.exposeFloat('auxiliaryTotal', { description: 'Known total of the latter.' }),
    standardErrorForm: t.expose('standardErrorForm', {
      type: StandardErrorFormEnum,
      description: 'Form of the standard error.',
    }),
    total: t.expose('total', { type: SurveyFigureType, description: 'Total of the values.' }),
  }),
})

export const SurveyEstimateType = builder.objectRef<SurveyEstimate>('SurveyEstimate').implement({
  description: 'What a whole population draws, from surveyed homes.',
  fields: (t) => ({
    methodVersion: t.exposeString('methodVersion', { description: 'Version of the estimation method.' }),
    unit: t.exposeString('unit', { nullable: true, description: 'Unit of the values, as it was sent.' }),
    coverageProbability: t.exposeFloat('coverageProbability', {
      description: 'Probability that an interval holds the value, 0 to 1.',
    }),
    sampledHomes: t.exposeFloat('sampledHomes', { description: 'Sampled homes in all.' }),
    degreesOfFreedom: t.exposeFloat('degreesOfFreedom', {
      description: 'Sampled homes, or clusters, less strata.',
    }),
    tQuantile: t.exposeFloat('tQuantile', {
      description: "Quantile of Student's t that the intervals were made with.",
    }),
    finitePopulationCorrection: t.exposeBoolean('finitePopulationCorrection', {
      description: 'Whether what was surveyed adds no uncertainty.',
    }),
    populationHomes: t.exposeFloat('populationHomes', {
      description:
        'Homes of the population; estimated where clusters were drawn and strata do not give them.',
    }),
    total: t.expose('total', { type: SurveyFigureType, description: 'Total over all homes.' }),
    mean: t.expose('mean', { type: SurveyFigureType, description: 'Mean over all homes.' }),
    designEffect: t.exposeFloat('designEffect', {
      nullable: true,
      description:
        'Variance of the total over that of a simple random sample of as many homes; null where that is zero.',
    }),
    strata: t.field({
      type: [SurveyStratumType],
      description: 'Strata, as they were sent.',
      resolve: ({ strata }) => strata,
    }),
    domains: t.field({
      type: [SurveyDomainType],
      description: 'Domains, in the order of their names.',
      resolve: ({ domains }) => domains,
    }),
    ratio: t.expose('ratio', {
      type: SurveyRatioType,
      nullable: true,
      description: 'Ratio estimate; null where none was asked for.',
    }),
    assumptions: t.stringList({
      description: 'What the estimate rests on, a sentence each.',
      resolve: ({ assumptions }) => assumptions,
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

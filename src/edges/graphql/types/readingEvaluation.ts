import type { UncertaintyRule } from '../../../core/readings/meterIsGoodEnough.ts'
import type { ReadingEvaluation } from '../../../core/readings/readingEvaluation.ts'
import type { SeriesAnalysis } from '../../../core/readings/series/analyseSeries.ts'
import type { Step } from '../../../core/readings/steps/step.ts'
import { builder } from '../builder.ts'
import { EXPECTED_LENGTH } from '../limits.ts'
import { RangeType } from './common.ts'
import { CatalogueLayerEnum, FlagEnum } from './enums.ts'
import { IntervalType } from './interval.ts'
import { ReadingKindEnum, VerdictEnum } from './readingEnums.ts'
import { SupplyType } from './settings.ts'
import { CautionType, WarningType } from './warning.ts'

const StepType = builder.objectRef<Step>('ReadingStep').implement({
  description: 'One step from what a meter showed to watts.',
  fields: (t) => ({
    what: t.exposeString('what', { description: 'What is done and why, in plain words.' }),
    formula: t.exposeString('formula', { description: 'The formula with its figures.' }),
    result: t.exposeString('result', { description: 'What comes out, with its unit.' }),
  }),
})

const UncertaintyRuleType = builder.objectRef<UncertaintyRule>('UncertaintyRule').implement({
  description:
    'What an edition of IEC 62301 asks of the uncertainty of a power reading, and whether it is met.',
  fields: (t) => ({
    edition: t.exposeString('edition', { description: 'The standard, with edition and clause.' }),
    mark: t.exposeString('mark', { description: 'V: read in a copy of the source. M: from memory.' }),
    limitW: t.exposeFloat('limitW', { description: 'Largest uncertainty that the rule lets pass, W.' }),
    expandedUncertaintyW: t.exposeFloat('expandedUncertaintyW', {
      description: 'Half-width of the 95 % coverage interval, W.',
    }),
    goodEnough: t.exposeBoolean('goodEnough', { description: 'True where the rule is met.' }),
  }),
})

const CycleType = builder.objectRef<NonNullable<SeriesAnalysis['cycle']>>('SeriesCycle').implement({
  description: 'A cycle that a series repeats.',
  fields: (t) => ({
    periodSeconds: t.exposeFloat('periodSeconds', { description: 'Length of one cycle, s.' }),
    cycles: t.exposeInt('cycles', { description: 'Whole cycles in the last two thirds of the series.' }),
  }),
})

const SeriesAnalysisType = builder.objectRef<SeriesAnalysis>('SeriesAnalysis').implement({
  description: 'How a series of power samples was judged.',
  fields: (t) => ({
    verdict: t.expose('verdict', { type: VerdictEnum, description: 'Stable, unstable or too short.' }),
    cycle: t.expose('cycle', {
      type: CycleType,
      nullable: true,
      description: 'The cycle that the power repeats; null where none was found.',
    }),
    samples: t.exposeInt('samples', { description: 'Samples that were sent.' }),
    durationSeconds: t.exposeFloat('durationSeconds', { description: 'Time that they span, s.' }),
    used: t.exposeInt('used', {
      description: 'Samples that the mean is taken over: the last two thirds, or whole cycles of them.',
    }),
    meanW: t.exposeFloat('meanW', { description: 'Their mean, W.' }),
    slopeWPerHour: t.exposeFloat('slopeWPerHour', { description: 'How fast the power changes, W an hour.' }),
    slopeLimitWPerHour: t.exposeFloat('slopeLimitWPerHour', {
      description: 'Largest slope that counts as stable, W an hour.',
    }),
    standardUncertaintyW: t.exposeFloat('standardUncertaintyW', {
      description: 'Standard uncertainty of the mean from the scatter alone (type A), W.',
    }),
    effectiveSamples: t.exposeFloat('effectiveSamples', {
      description: 'Independent samples, or whole cycles, that would give as sure a mean.',
    }),
    degreesOfFreedom: t.exposeFloat('degreesOfFreedom', {
      description: 'Degrees of freedom of that uncertainty.',
    }),
  }),
})

export const ReadingEvaluationType = builder.objectRef<ReadingEvaluation>('ReadingEvaluation').implement({
  description: 'What one reading says: real power, how sure, and how it was worked out.',
  fields: (t) => ({
    catalogueRevision: t.exposeInt('catalogueRevision', { description: 'Catalogue revision that was used.' }),
    overlayRevision: t.exposeInt('overlayRevision', {
      description: "Revision of your organisation's own figures that lay over it; 0 where there were none.",
    }),
    methodVersion: t.exposeString('methodVersion', { description: 'Version of the estimation method.' }),
    coverageProbability: t.exposeFloat('coverageProbability', {
      description: 'Probability that an interval holds the value, 0 to 1.',
    }),
    kind: t.expose('kind', { type: ReadingKindEnum, description: 'What was read.' }),
    supply: t.expose('supply', { type: SupplyType, description: 'Mains supply that was used.' }),
    quantity: t.exposeInt('quantity', { description: 'Number of devices; power is of all of them.' }),
    category: t.exposeString('category', {
      nullable: true,
      description: 'Code of the category that was found; null where none was named.',
    }),
    categoryName: t.exposeString('categoryName', { nullable: true, description: 'Name of the category.' }),
    catalogueLayer: t.expose('catalogueLayer', {
      type: CatalogueLayerEnum,
      nullable: true,
      description:
        'Whose figures of the category went in, or were held against the reading; null without a category.',
    }),
    sampleData: t.exposeBoolean('sampleData', {
      description: 'True where figures of the category are invented sample data.',
    }),
    confidence: t.expose('confidence', {
      type: FlagEnum,
      description: 'How sure the origin of the power is.',
    }),
    powerW: t.expose('powerW', { type: IntervalType, description: 'Real power, W.' }),
    apparentPowerVa: t.expose('apparentPowerVa', {
      type: IntervalType,
      nullable: true,
      description: 'Apparent power, VA; null unless current or apparent power was read.',
    }),
    reactivePowerVar: t.expose('reactivePowerVar', {
      type: IntervalType,
      nullable: true,
      description: 'Non-active power, var, sqrt(S^2 - P^2); null unless current or apparent power was read.',
    }),
    powerFactor: t.expose('powerFactor', {
      type: RangeType,
      nullable: true,
      description: 'Power factor (0 to 1, no unit) that turned VA into W.',
    }),
    series: t.expose('series', {
      type: SeriesAnalysisType,
      nullable: true,
      description: 'How the samples were judged; null unless samples were read.',
    }),
    uncertaintyRules: t.field({
      type: [UncertaintyRuleType],
      description: "IEC 62301's rules; empty where no meter was read, or its accuracy is not known.",
      complexity: { field: 1, multiplier: 2 },
      resolve: ({ uncertaintyRules }) => uncertaintyRules,
    }),
    assumptions: t.stringList({
      description: 'What was not read and had to be assumed, a sentence each.',
      resolve: ({ assumptions }) => assumptions,
    }),
    steps: t.field({
      type: [StepType],
      description: 'From what was read to watts, in order.',
      resolve: ({ steps }) => steps,
    }),
    warnings: t.field({
      type: [WarningType],
      description: 'What the reader of these figures must know.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.warnings },
      resolve: ({ warnings }) => warnings,
    }),
    guidance: t.field({
      type: [CautionType],
      description: 'How to read so that the figure is worth having.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.cautions },
      resolve: ({ guidance }) => guidance,
    }),
    cautions: t.field({
      type: [CautionType],
      description: 'Safety statements for readings of this kind.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.cautions },
      resolve: ({ cautions }) => cautions,
    }),
  }),
})

import type {
  BaseLoadEvaluation,
  ChosenEstimate,
  DataSummary,
  EstimatorResult,
  Explained,
  RestCandidate,
} from '../../../core/baseLoad/baseLoadEvaluation.ts'
import { builder } from '../builder.ts'
import { EXPECTED_LENGTH } from '../limits.ts'
import { BaseLoadEstimatorKindEnum, IntervalDataFormEnum } from './baseLoadEnums.ts'
import { IntervalType } from './interval.ts'
import { CautionType, WarningType } from './warning.ts'

const ClockChangeType = builder.objectRef<DataSummary['clockChanges'][number]>('ClockChange').implement({
  description: 'A day that is not 24 hours long.',
  fields: (t) => ({
    date: t.exposeString('date', { description: 'Local date.' }),
    hours: t.exposeFloat('hours', { description: 'Length of the day, h.' }),
  }),
})

const SpanType = builder.objectRef<{ readonly from: string; readonly to: string }>('Span').implement({
  description: 'From one date or instant to another; the field that holds it says which.',
  fields: (t) => ({
    from: t.exposeString('from', { description: 'Beginning.' }),
    to: t.exposeString('to', { description: 'End.' }),
  }),
})

const IntervalDataSummaryType = builder.objectRef<DataSummary>('IntervalDataSummary').implement({
  description: 'What the data is, and what was done to it before anything was read off it.',
  fields: (t) => ({
    form: t.expose('form', { type: IntervalDataFormEnum, description: 'Form in which it came.' }),
    timeZone: t.exposeString('timeZone', { description: 'What told local time.' }),
    from: t.exposeString('from', { description: 'Beginning, UTC.' }),
    to: t.exposeString('to', { description: 'End, UTC.' }),
    intervalSeconds: t.exposeFloat('intervalSeconds', { description: 'Length of each reading, s.' }),
    readings: t.exposeInt('readings', { description: 'Readings that count.' }),
    days: t.exposeInt('days', { description: 'Local days with readings.' }),
    completeDays: t.exposeInt('completeDays', { description: 'Days of which at least 90 % is covered.' }),
    clockChanges: t.field({
      type: [ClockChangeType],
      description: 'Days that are not 24 hours long.',
      resolve: ({ clockChanges }) => clockChanges,
    }),
    coveredShare: t.exposeFloat('coveredShare', { description: 'Share of the time covered, 0 to 1.' }),
    gaps: t.exposeInt('gaps', { description: 'Stretches without readings.' }),
    longestGapHours: t.exposeFloat('longestGapHours', { description: 'Longest of them, h.' }),
    duplicates: t.exposeInt('duplicates', { description: 'Readings that repeated another; count once.' }),
    conflicts: t.exposeInt('conflicts', { description: 'Intervals with two values; left out.' }),
    overlaps: t.exposeInt('overlaps', { description: 'Readings that overlapped others; left out.' }),
    joined: t.exposeInt('joined', { description: 'Shorter readings that were put together.' }),
    estimated: t.exposeInt('estimated', { description: 'Readings that the data marks as estimated.' }),
    energyKwh: t.exposeFloat('energyKwh', { description: 'Energy of all readings, kWh.' }),
    meanW: t.exposeFloat('meanW', { description: 'Mean of all readings, W.' }),
    leastReadingW: t.exposeFloat('leastReadingW', { description: 'Least reading, W.' }),
  }),
})

const BaseLoadEstimatorType = builder.objectRef<EstimatorResult>('BaseLoadEstimator').implement({
  description: 'One way to read the base load, and what it gives.',
  fields: (t) => ({
    estimator: t.expose('estimator', { type: BaseLoadEstimatorKindEnum, description: 'Which one.' }),
    definition: t.exposeString('definition', { description: 'What it is, in words.' }),
    powerW: t.exposeFloat('powerW', { nullable: true, description: 'Its figure, W; null with a reason.' }),
    low: t.exposeFloat('low', { nullable: true, description: 'Lower end of its interval, W.' }),
    high: t.exposeFloat('high', { nullable: true, description: 'Upper end of its interval, W.' }),
    days: t.exposeInt('days', { description: 'Days that it rests on.' }),
    reason: t.exposeString('reason', { nullable: true, description: 'Why there is no figure.' }),
  }),
})

const ChosenBaseLoadType = builder.objectRef<ChosenEstimate>('ChosenBaseLoad').implement({
  description: 'The estimator that was chosen, with its interval.',
  fields: (t) => ({
    estimator: t.expose('estimator', { type: BaseLoadEstimatorKindEnum, description: 'Which one.' }),
    powerW: t.expose('powerW', { type: IntervalType, description: 'Base load, W.' }),
    energyKwhPerYear: t.expose('energyKwhPerYear', {
      type: IntervalType,
      description: 'The same all year, kWh.',
    }),
    shareOfUse: t.exposeFloat('shareOfUse', {
      nullable: true,
      description: 'Of the mean power of all readings, 0 to 1; null with generation.',
    }),
    days: t.exposeInt('days', { description: 'Days that it rests on.' }),
    effectiveDays: t.exposeFloat('effectiveDays', {
      description: 'Independent days that would give as sure a figure.',
    }),
    degreesOfFreedom: t.exposeFloat('degreesOfFreedom', { description: 'Of the interval.' }),
    explanation: t.exposeString('explanation', { description: 'In words.' }),
    formula: t.exposeString('formula', { description: 'As a formula.' }),
    source: t.exposeString('source', { description: 'Where the method comes from.' }),
  }),
})

const RestCandidateType = builder.objectRef<RestCandidate>('RestCandidate').implement({
  description: 'What the rest of a base load could be.',
  fields: (t) => ({
    code: t.exposeString('code', { description: 'Stable name in kebab-case.' }),
    isStandby: t.exposeBoolean('isStandby', { description: 'False for what runs by itself.' }),
    message: t.exposeString('message', { description: 'In words.' }),
    source: t.exposeString('source', { description: 'Where it comes from.' }),
  }),
})

const ExplainedBaseLoadType = builder.objectRef<Explained>('ExplainedBaseLoad').implement({
  description: 'How much of a base load an inventory explains.',
  fields: (t) => ({
    from: t.exposeString('from', { description: 'inventory, or request where its power was given.' }),
    devices: t.exposeInt('devices', { nullable: true, description: 'Entries of the inventory.' }),
    sampleData: t.exposeBoolean('sampleData', { description: 'True where invented sample data went in.' }),
    powerW: t.expose('powerW', { type: IntervalType, description: 'What the inventory draws, W.' }),
    explainedShare: t.expose('explainedShare', {
      type: IntervalType,
      description: 'Inventory over base load.',
    }),
    restW: t.expose('restW', { type: IntervalType, description: 'Base load less inventory, W.' }),
    correlation: t.exposeString('correlation', { description: 'What is assumed of the two.' }),
    couldBe: t.field({
      type: [RestCandidateType],
      description: 'What the rest could be.',
      resolve: ({ couldBe }) => couldBe,
    }),
  }),
})

const NightWindowType = builder.objectRef<BaseLoadEvaluation['night']>('NightWindow').implement({
  description: 'Hours of the local day that count as night.',
  fields: (t) => ({
    fromHour: t.exposeFloat('fromHour', { description: 'Beginning, local hour.' }),
    toHour: t.exposeFloat('toHour', { description: 'End, local hour.' }),
  }),
})

const DaysAwayType = builder.objectRef<BaseLoadEvaluation['daysAway']>('DaysAway').implement({
  description: 'Days on which nobody was at home.',
  fields: (t) => ({
    named: t.field({
      type: [SpanType],
      description: 'Local dates that were named; left out.',
      resolve: ({ named }) => named,
    }),
    suspected: t.field({
      type: [SpanType],
      description: 'Local dates that look like it; they count until they are named.',
      resolve: ({ suspected }) => suspected,
    }),
    meanW: t.exposeFloat('meanW', { nullable: true, description: 'Mean power of those named, W.' }),
  }),
})

export const BaseLoadEvaluationType = builder.objectRef<BaseLoadEvaluation>('BaseLoadEvaluation').implement({
  description: 'What a home draws when nobody uses anything, and how much of it an inventory explains.',
  fields: (t) => ({
    methodVersion: t.exposeString('methodVersion', { description: 'Version of the method.' }),
    catalogueRevision: t.exposeInt('catalogueRevision', { description: 'Revision that was used.' }),
    overlayRevision: t.exposeInt('overlayRevision', {
      description: "Revision of your organisation's own figures that lay over it; 0 where there were none.",
    }),
    coverageProbability: t.exposeFloat('coverageProbability', {
      description: 'Probability that an interval holds the value, 0 to 1.',
    }),
    night: t.expose('night', { type: NightWindowType, description: 'The night window.' }),
    data: t.expose('data', { type: IntervalDataSummaryType, description: 'What the data is.' }),
    estimators: t.field({
      type: [BaseLoadEstimatorType],
      description: 'All estimators side by side.',
      resolve: ({ estimators }) => estimators,
    }),
    chosen: t.expose('chosen', { type: ChosenBaseLoadType, description: 'The one that was chosen.' }),
    daysAway: t.expose('daysAway', { type: DaysAwayType, description: 'Days away.' }),
    outages: t.field({
      type: [SpanType],
      description: 'Instants in UTC: runs of zero readings for an hour or longer; left out.',
      resolve: ({ outages }) => outages,
    }),
    generation: t.exposeBoolean('generation', {
      description: 'True where something behind the meter generates.',
    }),
    inventory: t.expose('inventory', {
      type: ExplainedBaseLoadType,
      nullable: true,
      description: 'What the inventory explains; null where none was given.',
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

import type { Refusal } from '../../../core/savings/offered.ts'
import type { SavingsFactor } from '../../../core/savings/savingsFactor.ts'
import type { ChosenSet, KeptPowered, SavingsPlan } from '../../../core/savings/savingsPlan.ts'
import { builder } from '../builder.ts'
import { EXPECTED_LENGTH, SHORT_LIST } from '../limits.ts'
import { KeepPoweredReasonEnum } from './enums.ts'
import { TotalEstimateType } from './estimate.ts'
import { OfferedMeasureType } from './offeredMeasure.ts'
import { SavingFiguresType } from './savingFigures.ts'
import { PlanGoalEnum, RefusalCodeEnum } from './savingsEnums.ts'
import { EmissionFactorType } from './settings.ts'
import { FactorKindEnum } from './tariffEnums.ts'
import { CautionType, WarningType } from './warning.ts'

const ChosenSetType = builder.objectRef<ChosenSet>('ChosenSavings').implement({
  description:
    'The best set of measures: the household before less after, no sum of single measures, since they overlap.',
  fields: (t) => ({
    measureIds: t.stringList({
      description: 'Ids of its measures, as in `measures`.',
      complexity: SHORT_LIST,
      resolve: ({ measureIds }) => [...measureIds],
    }),
    figures: t.expose('figures', { type: SavingFiguresType, description: 'What it saves and costs.' }),
  }),
})

const RefusalType = builder.objectRef<Refusal>('MeasureNotOffered').implement({
  description: 'A measure that could be meant for some devices but is not offered for them.',
  fields: (t) => ({
    measureCode: t.exposeString('measureCode', { description: 'Code of the measure.' }),
    deviceIds: t.stringList({
      description: 'Ids of the devices.',
      complexity: SHORT_LIST,
      resolve: ({ deviceIds }) => [...deviceIds],
    }),
    outlet: t.exposeString('outlet', { nullable: true, description: 'Outlet, where it is for one.' }),
    code: t.expose('code', { type: RefusalCodeEnum, description: 'Why.' }),
    message: t.exposeString('message', { description: 'The same in words, and what to do.' }),
  }),
})

const KeptPoweredType = builder.objectRef<KeptPowered>('KeptPowered').implement({
  description: 'A device that no measure may touch.',
  fields: (t) => ({
    deviceId: t.exposeString('deviceId', { description: 'Id of the device.' }),
    label: t.exposeString('label', { nullable: true, description: 'Its label, where it has one.' }),
    category: t.exposeString('category', { description: 'Code of its category.' }),
    categoryName: t.exposeString('categoryName', { description: 'Name of its category.' }),
    reason: t.expose('reason', { type: KeepPoweredReasonEnum, description: 'Kind of reason.' }),
    note: t.exposeString('note', { description: 'What could happen otherwise, in a sentence.' }),
  }),
})

const SavingsFactorType = builder.objectRef<SavingsFactor>('SavingsFactor').implement({
  description: 'What a kWh less keeps out of the air.',
  fields: (t) => ({
    factor: t.expose('factor', { type: EmissionFactorType, description: 'The factor.' }),
    kind: t.expose('kind', {
      type: FactorKindEnum,
      nullable: true,
      description: 'Marginal where one is known; null where the request gave a factor and did not say.',
    }),
    source: t.exposeString('source', { description: 'Where it is from.' }),
  }),
})

export const SavingsPlanType = builder.objectRef<SavingsPlan>('SavingsPlan').implement({
  description: 'What one household can save, and what it must leave powered.',
  fields: (t) => ({
    overlayRevision: t.exposeInt('overlayRevision', {
      description: "Revision of your organisation's own figures that lay over it; 0 where there were none.",
    }),
    referenceRevision: t.exposeInt('referenceRevision', {
      description: 'Revision of tariffs and emission factors that was used.',
    }),
    catalogueRevision: t.exposeInt('catalogueRevision', { description: 'Catalogue revision that was used.' }),
    coverageProbability: t.exposeFloat('coverageProbability', {
      description: 'Probability that an interval holds the value, 0 to 1.',
    }),
    currency: t.exposeString('currency', { description: 'ISO 4217 code of every price.' }),
    sampleData: t.exposeBoolean('sampleData', {
      description: 'True where any figure that went in is invented.',
    }),
    methodVersion: t.exposeString('methodVersion', { description: 'Version of the estimation method.' }),
    goal: t.expose('goal', { type: PlanGoalEnum, description: 'What the best set is.' }),
    budget: t.exposeFloat('budget', {
      nullable: true,
      description: 'What may be spent; null where there is no bound.',
    }),
    standbyPricePerKwh: t.exposeFloat('standbyPricePerKwh', {
      description: 'Mean cost of a kWh of standby, taxes included.',
    }),
    priceBasis: t.exposeString('priceBasis', { description: 'How that price came about.' }),
    savingsFactor: t.expose('savingsFactor', {
      type: SavingsFactorType,
      description: 'Emission factor that savings count with.',
    }),
    total: t.expose('total', {
      type: TotalEstimateType,
      description: 'The household before anything is done.',
    }),
    measures: t.field({
      type: [OfferedMeasureType],
      description: 'Every measure at every place, each as if it were the only one.',
      resolve: ({ measures }) => measures,
    }),
    plan: t.expose('plan', {
      type: ChosenSetType,
      nullable: true,
      description: 'The best set; null where nothing is worth doing.',
    }),
    notOffered: t.field({
      type: [RefusalType],
      description: 'What is not offered, and why.',
      resolve: ({ notOffered }) => notOffered,
    }),
    keptPowered: t.field({
      type: [KeptPoweredType],
      description: 'Devices that must stay powered, with the reason.',
      resolve: ({ keptPowered }) => keptPowered,
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

import type {
  BetterKnown,
  TotalVerification,
  Verification,
  VerificationSource,
} from '../../../core/verification/verification.ts'
import { builder } from '../builder.ts'
import { EXPECTED_LENGTH } from '../limits.ts'
import { FlagEnum, ModeEnum } from './enums.ts'
import { IntervalType } from './interval.ts'
import { UsedType } from './settings.ts'
import { SourceMarkEnum } from './tariffEnums.ts'
import { DeviceVerificationType } from './verificationDevice.ts'
import { VisitEnum } from './verificationEnums.ts'
import { PlanProgressType } from './verificationPlan.ts'
import { SavingPartsType, SavingType } from './verificationSaving.ts'
import { CautionType, WarningType } from './warning.ts'

const TotalVerificationType = builder.objectRef<TotalVerification>('TotalVerification').implement({
  description: 'All devices together.',
  fields: (t) => ({
    beforeKwhPerYear: t.expose('beforeKwhPerYear', {
      type: IntervalType,
      description: 'Energy as an estimate of the first visit gives it, kWh a year.',
    }),
    afterKwhPerYear: t.expose('afterKwhPerYear', {
      type: IntervalType,
      description: 'Energy as an estimate of the second visit gives it, kWh a year.',
    }),
    all: t.expose('all', { type: SavingType, description: 'What all devices saved.' }),
    kept: t.expose('kept', { type: SavingType, description: 'What those saved that both visits found.' }),
    keptParts: t.expose('keptParts', {
      type: SavingPartsType,
      description: 'What the saving of those consists of.',
    }),
    removed: t.expose('removed', {
      type: SavingType,
      description: 'What those saved that only the first found.',
    }),
    added: t.expose('added', {
      type: SavingType,
      description: 'What those saved that only the second found: below zero.',
    }),
  }),
})

const BetterKnownType = builder.objectRef<BetterKnown>('BetterKnown').implement({
  description: 'A figure that one visit knew better: it stands for both, and what that moves is no saving.',
  fields: (t) => ({
    deviceId: t.exposeString('deviceId', { description: 'Id of the device.' }),
    mode: t.expose('mode', { type: ModeEnum, description: 'Mode.' }),
    from: t.expose('from', { type: FlagEnum, description: 'How sure the replaced figure was.' }),
    to: t.expose('to', { type: FlagEnum, description: 'How sure the figure is that stands for it.' }),
    rebasedVisit: t.expose('rebasedVisit', {
      type: VisitEnum,
      description: 'The visit whose figure was replaced.',
    }),
    estimatedKwhPerYear: t.expose('estimatedKwhPerYear', {
      type: IntervalType,
      description: 'Energy as an estimate of that visit gives it, kWh a year.',
    }),
    rebasedKwhPerYear: t.expose('rebasedKwhPerYear', {
      type: IntervalType,
      description: 'Energy as it counts here, kWh a year.',
    }),
    differenceKwhPerYear: t.expose('differenceKwhPerYear', {
      type: IntervalType,
      description: 'What this takes out of the difference of the two estimates, kWh a year.',
    }),
  }),
})

const AllBetterKnownType = builder.objectRef<Verification['betterKnown']>('AllBetterKnown').implement({
  description: 'Everything that one visit knew better than the other.',
  fields: (t) => ({
    items: t.field({
      type: [BetterKnownType],
      description: 'Each mode of each device.',
      resolve: ({ items }) => items,
    }),
    differenceKwhPerYear: t.expose('differenceKwhPerYear', {
      type: IntervalType,
      description: 'All of them together, kWh a year.',
    }),
  }),
})

const VerificationSourceType = builder.objectRef<VerificationSource>('VerificationSource').implement({
  description: 'A document that the verification follows.',
  fields: (t) => ({
    document: t.exposeString('document', { description: 'Title.' }),
    year: t.exposeInt('year', { description: 'Year of the edition.' }),
    says: t.exposeString('says', { description: 'What is taken from it.' }),
    mark: t.expose('mark', { type: SourceMarkEnum, description: 'How well that is confirmed.' }),
  }),
})

export const VerificationType = builder.objectRef<Verification>('Verification').implement({
  description:
    'What was saved between two visits to one household, and how sure that is. Savings are before less after.',
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
    currency: t.exposeString('currency', { description: 'ISO 4217 code of every cost.' }),
    sampleData: t.exposeBoolean('sampleData', {
      description: 'True where any figure that went in is invented sample data.',
    }),
    used: t.expose('used', { type: UsedType, description: 'What both visits were counted with.' }),
    devices: t.field({
      type: [DeviceVerificationType],
      description: 'Those of the first visit in its order, then those that only the second found.',
      resolve: ({ devices }) => devices,
    }),
    total: t.expose('total', { type: TotalVerificationType, description: 'All devices together.' }),
    betterKnown: t.expose('betterKnown', {
      type: AllBetterKnownType,
      description: 'What is better known and no saving.',
    }),
    plan: t.expose('plan', {
      type: PlanProgressType,
      nullable: true,
      description: 'What part of the plan was carried out; null where none was sent.',
    }),
    sources: t.field({
      type: [VerificationSourceType],
      description: 'What the verification follows.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.warnings },
      resolve: ({ sources }) => sources,
    }),
    warnings: t.field({
      type: [WarningType],
      description: 'What the reader of the whole answer must know.',
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

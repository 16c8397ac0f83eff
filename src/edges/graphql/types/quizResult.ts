import type { MustStayOn, QuizResult, WorthDoing } from '../../../core/quiz/quizResult.ts'
import { builder } from '../builder.ts'
import { FlagEnum, KeepPoweredReasonEnum } from './enums.ts'
import { EstimateType } from './estimate.ts'
import { IntervalType } from './interval.ts'
import { MoneyIntervalType } from './moneyInterval.ts'
import { QuizHouseholdType } from './quizHousehold.ts'
import { labelText, stayOnText } from './quizQuestion.ts'

const DEVICE_ID = { description: 'Id of the device in household and estimate; answer-1 is the first answer.' }
const CATEGORY = { description: 'Code of its category.' }

const WorthDoingType = builder.objectRef<WorthDoing>('WorthDoing').implement({
  description: 'A device that much goes into and that may be switched off.',
  fields: (t) => ({
    deviceId: t.exposeString('deviceId', DEVICE_ID),
    category: t.exposeString('category', CATEGORY),
    label: t.exposeString('label', labelText.label),
    labelLanguage: t.exposeString('labelLanguage', labelText.labelLanguage),
    advice: t.exposeString('advice', { description: 'What can be done about it.' }),
    confidence: t.expose('confidence', { type: FlagEnum, description: 'How sure its figures are.' }),
    energyKwhPerYear: t.expose('energyKwhPerYear', {
      type: IntervalType,
      description: 'Energy, kWh a year.',
    }),
    costPerYear: t.expose('costPerYear', {
      type: MoneyIntervalType,
      description: "Cost a year, in units of the estimate's currency.",
    }),
    shareOfTotal: t.exposeFloat('shareOfTotal', {
      description: "Share of the total's expected energy, 0 to 1.",
    }),
  }),
})

const MustStayOnType = builder.objectRef<MustStayOn>('MustStayOn').implement({
  description: 'A device that must stay on, and why.',
  fields: (t) => ({
    deviceId: t.exposeString('deviceId', DEVICE_ID),
    category: t.exposeString('category', CATEGORY),
    label: t.exposeString('label', labelText.label),
    labelLanguage: t.exposeString('labelLanguage', labelText.labelLanguage),
    reason: t.expose('reason', { type: KeepPoweredReasonEnum, description: 'Kind of reason.' }),
    reasonText: t.exposeString('reasonText', stayOnText.reasonText),
    note: t.exposeString('note', stayOnText.note),
    noteLanguage: t.exposeString('noteLanguage', stayOnText.noteLanguage),
  }),
})

export const QuizResultType = builder.objectRef<QuizResult>('QuizResult').implement({
  description: 'What comes of the answers to the quiz. Sentences within `estimate` are in English.',
  fields: (t) => ({
    language: t.exposeString('language', { description: 'Language of labels, advice and reasons.' }),
    overlayRevision: t.exposeInt('overlayRevision', {
      description: "Revision of your organisation's own figures that lay over it; 0 where there were none.",
    }),
    catalogueRevision: t.exposeInt('catalogueRevision', { description: 'Revision that was used.' }),
    sampleData: t.exposeBoolean('sampleData', { description: 'Whether figures are invented.' }),
    sampleDataNotice: t.exposeString('sampleDataNotice', {
      nullable: true,
      description: 'The same in words, to be shown wherever figures are.',
    }),
    household: t.expose('household', {
      type: QuizHouseholdType,
      description: 'What the answers were turned into.',
    }),
    estimate: t.expose('estimate', { type: EstimateType, description: 'Its estimate.' }),
    worthDoing: t.field({
      type: [WorthDoingType],
      description: 'Three at most, largest energy first; never what must stay powered.',
      complexity: { field: 1, multiplier: 3 },
      resolve: ({ worthDoing }) => worthDoing,
    }),
    mustStayOn: t.field({
      type: [MustStayOnType],
      description: 'What must stay on.',
      resolve: ({ mustStayOn }) => mustStayOn,
    }),
    beforeSwitchingOff: t.exposeString('beforeSwitchingOff', {
      description: 'What to do before anything is switched off.',
    }),
  }),
})

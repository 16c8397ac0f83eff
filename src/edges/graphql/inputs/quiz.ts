import { LIMITS } from '../../../schemas/common.ts'
import { builder } from '../builder.ts'
import { ModeEnum } from '../types/enums.ts'
import { HoursChoiceEnum } from '../types/quizEnums.ts'

const QuizPowerInput = builder.inputType('QuizPowerInput', {
  description: 'Real power.',
  fields: (t) => ({ watts: t.float({ required: true, description: 'The figure beside W.' }) }),
})

const QuizEnergyInput = builder.inputType('QuizEnergyInput', {
  description: 'Energy over a time.',
  fields: (t) => ({
    kilowattHours: t.float({ required: true, description: 'The figure beside kWh.' }),
    durationHours: t.float({ required: true, description: 'How long the meter had been counting, h.' }),
  }),
})

const QuizApparentPowerInput = builder.inputType('QuizApparentPowerInput', {
  description: 'Apparent power, which is not watts.',
  fields: (t) => ({ voltAmperes: t.float({ required: true, description: 'The figure beside VA.' }) }),
})

const QuizCurrentInput = builder.inputType('QuizCurrentInput', {
  description: 'Current.',
  fields: (t) => ({
    amperes: t.float({ required: true, description: 'The figure beside A; 120 mA are 0.12.' }),
  }),
})

const QuizReadingInput = builder.inputType('QuizReadingInput', {
  description: 'What somebody read off a meter, of one device: exactly one kind.',
  isOneOf: true,
  fields: (t) => ({
    power: t.field({ type: QuizPowerInput, description: 'Real power.' }),
    energy: t.field({ type: QuizEnergyInput, description: 'Energy over a time.' }),
    apparentPower: t.field({ type: QuizApparentPowerInput, description: 'Apparent power.' }),
    current: t.field({ type: QuizCurrentInput, description: 'Current.' }),
  }),
})

const QuizAnswerInput = builder.inputType('QuizAnswerInput', {
  description: 'What somebody answered of one kind of device.',
  fields: (t) => ({
    category: t.string({ required: true, description: 'Code of the category, as the quiz gave it.' }),
    count: t.int({ required: true, description: 'How many there are, 0 to 99.' }),
    hours: t.field({ type: HoursChoiceEnum, description: 'How long it is plugged in; usual by default.' }),
    year: t.int({ description: 'Year of manufacture.' }),
    reading: t.field({ type: QuizReadingInput, description: 'What was read.' }),
    readingMode: t.field({
      type: ModeEnum,
      description:
        "What the device was doing when it was read; the first of the question's `readingModes` by default.",
    }),
  }),
})

export const QuizAnswersInput = builder.inputType('QuizAnswersInput', {
  description:
    'The answers to a quiz; null is the same as absent. Fault pointers in error extensions are JSON Pointers into this input.',
  fields: (t) => ({
    overlayRevision: t.int({ description: 'That of the quiz, too; the newest by default.' }),
    catalogueRevision: t.int({ required: true, description: 'That of the quiz which these answers are to.' }),
    tariffCode: t.string({
      description: "Code of a tariff that the service knows; the operator's setting by default.",
    }),
    emissionFactorCode: t.string({
      description: "Code of an emission factor that the service knows; the operator's setting by default.",
    }),
    answers: t.field({
      type: [QuizAnswerInput],
      required: true,
      description: `The answers, 1 to ${LIMITS.devices}.`,
    }),
  }),
})

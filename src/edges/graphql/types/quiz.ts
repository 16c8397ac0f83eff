import type { Quiz } from '../../../core/quiz/quiz.ts'
import { builder } from '../builder.ts'
import { EXPECTED_LENGTH, SHORT_LIST } from '../limits.ts'
import { ModeEnum } from './enums.ts'
import { HoursChoiceEnum, QuizFigureEnum } from './quizEnums.ts'
import { QuizGroupType } from './quizQuestion.ts'
import { QuizTextsType } from './quizTexts.ts'
import { ReadingKindEnum } from './readingEnums.ts'

type MemberOf<T extends keyof Quiz> = Quiz[T] extends readonly (infer Member)[] ? Member : never
const LABEL = { description: 'What it is called.' }
const HELP = { description: 'What it means.' }

const QuizLanguageType = builder.objectRef<MemberOf<'languages'>>('QuizLanguage').implement({
  description: 'A language that the quiz can be asked in.',
  fields: (t) => ({
    language: t.exposeString('language', { description: 'Language tag (BCP 47).' }),
    name: t.exposeString('name', { description: 'What the language calls itself.' }),
  }),
})

const QuizHoursChoiceType = builder.objectRef<MemberOf<'hoursChoices'>>('QuizHoursChoice').implement({
  description: 'A choice of hours in words.',
  fields: (t) => ({
    choice: t.expose('choice', { type: HoursChoiceEnum, description: 'The choice.' }),
    label: t.exposeString('label', LABEL),
    help: t.exposeString('help', HELP),
  }),
})

type Reading = MemberOf<'readings'>
const QuizReadingFigureType = builder.objectRef<Reading['figures'][number]>('QuizReadingFigure').implement({
  description: 'A figure of a reading.',
  fields: (t) => ({
    name: t.expose('name', { type: QuizFigureEnum, description: 'The figure.' }),
    label: t.exposeString('label', LABEL),
    unit: t.exposeString('unit', { description: 'Unit as meters show it.' }),
  }),
})

const QuizReadingKindType = builder.objectRef<Reading>('QuizReadingKind').implement({
  description: 'A kind of reading that can be given.',
  fields: (t) => ({
    kind: t.expose('kind', { type: ReadingKindEnum, description: 'The kind.' }),
    label: t.exposeString('label', LABEL),
    help: t.exposeString('help', { description: 'Which figure to give, and which not.' }),
    figures: t.field({
      type: [QuizReadingFigureType],
      description: 'Its figures.',
      complexity: SHORT_LIST,
      resolve: ({ figures }) => figures,
    }),
  }),
})

const QuizModeType = builder.objectRef<MemberOf<'modes'>>('QuizMode').implement({
  description: 'A mode in words.',
  fields: (t) => ({
    mode: t.expose('mode', { type: ModeEnum, description: 'The mode.' }),
    label: t.exposeString('label', LABEL),
  }),
})

export const QuizType = builder.objectRef<Quiz>('Quiz').implement({
  description: 'The questions of a self-check, in one language, of one revision of the catalogue.',
  fields: (t) => ({
    overlayRevision: t.exposeInt('overlayRevision', {
      description: "Revision of your organisation's own figures that lay over it; 0 where there were none.",
    }),
    catalogueRevision: t.exposeInt('catalogueRevision', {
      description: 'Revision that the questions come from; goes with the answers.',
    }),
    language: t.exposeString('language', { description: 'Language that was chosen.' }),
    languages: t.field({
      type: [QuizLanguageType],
      description: 'Languages that there are.',
      complexity: SHORT_LIST,
      resolve: ({ languages }) => languages,
    }),
    sampleData: t.exposeBoolean('sampleData', { description: 'Whether figures behind it are invented.' }),
    sampleDataNotice: t.exposeString('sampleDataNotice', {
      nullable: true,
      description: 'The same in words, to be shown wherever the quiz is.',
    }),
    texts: t.expose('texts', { type: QuizTextsType, description: 'Sentences that belong to no device.' }),
    hoursChoices: t.field({
      type: [QuizHoursChoiceType],
      description: 'The choices of hours in words.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.hoursChoices },
      resolve: ({ hoursChoices }) => hoursChoices,
    }),
    readings: t.field({
      type: [QuizReadingKindType],
      description: 'The kinds of reading that can be given.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.quizReadings },
      resolve: ({ readings }) => readings,
    }),
    modes: t.field({
      type: [QuizModeType],
      description: 'The modes in words.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.modes },
      resolve: ({ modes }) => modes,
    }),
    groups: t.field({
      type: [QuizGroupType],
      description: 'The parts of the home that there are questions of.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.groups },
      resolve: ({ groups }) => groups,
    }),
  }),
})

import type { DeviceMode } from '../../../core/inventory/household.ts'
import type { QuizGroup, QuizQuestion } from '../../../core/quiz/quiz.ts'
import type { StayOn } from '../../../core/quiz/stayOn.ts'
import { builder } from '../builder.ts'
import { EXPECTED_LENGTH, SHORT_LIST } from '../limits.ts'
import { RangeType } from './common.ts'
import { GroupEnum, KeepPoweredReasonEnum, ModeEnum } from './enums.ts'
import { HoursChoiceEnum } from './quizEnums.ts'

const TAG = 'Language tag (BCP 47).'
const LABEL_LANGUAGE =
  "Language of the label: that of the catalogue's names where the language asked for has no label for it."

/** What is said of how a device is called. */
export const labelText = {
  label: { description: 'What it is called, in plain words.' },
  labelLanguage: { description: LABEL_LANGUAGE },
} as const

/** Why something must stay on, and the languages of that. */
export const stayOnText = {
  reasonText: { description: 'The same in the language asked for.' },
  note: { description: 'What could happen otherwise, as the catalogue says it.' },
  noteLanguage: { description: TAG },
} as const

const QuizKeepPoweredType = builder.objectRef<StayOn>('QuizKeepPowered').implement({
  description: 'That a device must stay powered, and why.',
  fields: (t) => ({
    reason: t.expose('reason', { type: KeepPoweredReasonEnum, description: 'Kind of reason.' }),
    reasonText: t.exposeString('reasonText', stayOnText.reasonText),
    note: t.exposeString('note', stayOnText.note),
    noteLanguage: t.exposeString('noteLanguage', stayOnText.noteLanguage),
  }),
})

/** Hours a week as GraphQL answers them. */
export const rangeOfHours = (hours: DeviceMode['hoursPerWeek']) =>
  typeof hours === 'number' ? { low: hours, typical: hours, high: hours } : (hours ?? null)

const QuizModeHoursType = builder.objectRef<DeviceMode>('QuizModeHours').implement({
  description: 'A mode of a device, and hours in it.',
  fields: (t) => ({
    mode: t.expose('mode', { type: ModeEnum, description: 'The mode.' }),
    hoursPerWeek: t.field({
      type: RangeType,
      nullable: true,
      description: 'Hours a week, h; null leaves them to the catalogue.',
      resolve: ({ hoursPerWeek }) => rangeOfHours(hoursPerWeek),
    }),
  }),
})

const QuizHoursType = builder.objectRef<QuizQuestion['hours'][number]>('QuizHours').implement({
  description: 'A choice of hours, and what it makes of the modes of a device in an estimate.',
  fields: (t) => ({
    choice: t.expose('choice', { type: HoursChoiceEnum, description: 'The choice.' }),
    modes: t.field({
      type: [QuizModeHoursType],
      description: 'The modes.',
      complexity: { field: 1, multiplier: 2 },
      resolve: ({ modes }) => modes,
    }),
  }),
})

const QuizCountType = builder.objectRef<QuizQuestion['count']>('QuizCount').implement({
  description: 'How many there can be.',
  fields: (t) => ({
    min: t.exposeInt('min', { description: 'Least.' }),
    max: t.exposeInt('max', { description: 'Most.' }),
    default: t.exposeInt('default', { description: 'How many a home has that has any.' }),
  }),
})

const QuizQuestionType = builder.objectRef<QuizQuestion>('QuizQuestion').implement({
  description: 'What is asked of one kind of device.',
  fields: (t) => ({
    category: t.exposeString('category', { description: 'Code of the category.' }),
    label: t.exposeString('label', labelText.label),
    labelLanguage: t.exposeString('labelLanguage', labelText.labelLanguage),
    help: t.exposeString('help', { description: 'What to count.' }),
    sampleData: t.exposeBoolean('sampleData', { description: 'Whether the figures behind it are invented.' }),
    count: t.expose('count', { type: QuizCountType, description: 'How many there can be.' }),
    alwaysOn: t.exposeBoolean('alwaysOn', { description: 'Where it is true, hours are not asked.' }),
    keepPowered: t.field({
      type: QuizKeepPoweredType,
      nullable: true,
      description: 'Why it must stay powered: it is asked for, and never advised against.',
      resolve: ({ keepPowered }) => keepPowered,
    }),
    yearMatters: t.exposeBoolean('yearMatters', {
      description: 'Whether the figures depend on the year of manufacture.',
    }),
    hours: t.field({
      type: [QuizHoursType],
      description: 'The choices of hours.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.hoursChoices },
      resolve: ({ hours }) => hours,
    }),
    readingModes: t.field({
      type: [ModeEnum],
      description: 'Modes that a reading may be of; the first where nothing is said.',
      complexity: SHORT_LIST,
      resolve: ({ readingModes }) => [...readingModes],
    }),
  }),
})

export const QuizGroupType = builder.objectRef<QuizGroup>('QuizGroup').implement({
  description: 'The questions of one part of the home.',
  fields: (t) => ({
    group: t.expose('group', { type: GroupEnum, description: 'The part.' }),
    label: t.exposeString('label', { description: 'What it is called.' }),
    questions: t.field({
      type: [QuizQuestionType],
      description: 'In the order of their labels.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.questions },
      resolve: ({ questions }) => questions,
    }),
  }),
})

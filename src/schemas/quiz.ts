import { z } from 'zod'
import { GROUPS, KEEP_POWERED_REASONS, MODES } from '../core/catalogue/category.ts'
import { HOURS_CHOICES } from '../core/quiz/hoursChoice.ts'
import { QUIZ_TEXTS, type QuizText } from '../core/quiz/quizLanguage.ts'
import { FIGURE_UNITS, QUIZ_READING_KINDS, type QuizFigure } from '../core/quiz/quizReading.ts'
import { overlayRevisionUsed } from './layer.ts'

const hours = z.number().describe('Hours a week, h')
const tag = z.string().describe('Language tag (BCP 47)')
const choice = z.enum(HOURS_CHOICES)
const mode = z.enum(MODES)

/** What a kind of device is called. */
export const labelFields = {
  label: z.string(),
  labelLanguage: tag.describe(
    "Language of the label; that of the catalogue's names where the language asked for has no label for it",
  ),
}

export const stayOnFields = {
  reason: z.enum(KEEP_POWERED_REASONS),
  reasonText: z.string(),
  note: z.string().describe('What could happen otherwise, as the catalogue says it'),
  noteLanguage: tag,
}

const questionSchema = z
  .strictObject({
    category: z.string().describe('Code of the category'),
    ...labelFields,
    help: z.string(),
    sampleData: z.boolean().describe('Whether the figures behind it are invented'),
    count: z
      .strictObject({ min: z.int(), max: z.int(), default: z.int() })
      .describe('default is how many a home has that has any'),
    alwaysOn: z.boolean().describe('Where it is true, hours are not asked'),
    keepPowered: z
      .strictObject(stayOnFields)
      .nullable()
      .describe('Why it must stay powered: it is asked for, and never advised against'),
    yearMatters: z
      .boolean()
      .describe(
        'Whether the figures depend on the year of manufacture, so that asking for it makes them surer',
      ),
    hours: z.array(
      z.strictObject({
        choice,
        modes: z
          .array(
            z.strictObject({
              mode,
              hoursPerWeek: z.strictObject({ low: hours, typical: hours, high: hours }).optional(),
            }),
          )
          .describe(
            "What the choice makes of devices[].modes of an estimate; the catalogue's hours are left out",
          ),
      }),
    ),
    readingModes: z.array(mode).describe('Modes that a reading may be of; the first where nothing is said'),
  })
  .meta({ id: 'QuizQuestion' })

const explained = { label: z.string(), help: z.string() }

/** Answer of GET /v1/quiz. */
export const quizSchema = z
  .strictObject({
    catalogueRevision: z.int(),
    overlayRevision: overlayRevisionUsed,
    language: tag,
    languages: z.array(z.strictObject({ language: tag, name: z.string() })),
    sampleData: z.boolean(),
    sampleDataNotice: z.string().nullable().describe('To be shown wherever the quiz is'),
    texts: z.strictObject(
      Object.fromEntries(QUIZ_TEXTS.map((name) => [name, z.string()])) as Record<QuizText, z.ZodString>,
    ),
    hoursChoices: z.array(z.strictObject({ choice, ...explained })),
    readings: z.array(
      z.strictObject({
        kind: z.enum(QUIZ_READING_KINDS),
        ...explained,
        figures: z.array(
          z.strictObject({
            name: z.enum(Object.keys(FIGURE_UNITS) as QuizFigure[]).describe('Field of the reading'),
            label: z.string(),
            unit: z.string(),
          }),
        ),
      }),
    ),
    modes: z.array(z.strictObject({ mode, label: z.string() })),
    groups: z.array(
      z.strictObject({ group: z.enum(GROUPS), label: z.string(), questions: z.array(questionSchema) }),
    ),
  })
  .meta({ id: 'Quiz', description: 'The questions of a self-check, in one language' })

const CODES = /^[a-z0-9-]{1,64}(,[a-z0-9-]{1,64}){0,499}$/

export const quizQuerySchema = z.strictObject({
  group: z.enum(GROUPS).optional(),
  categories: z
    .string()
    .regex(CODES, 'must be codes of categories with commas between them, such as television,router')
    .optional()
    .describe('Only the categories with these codes, with commas between them'),
})

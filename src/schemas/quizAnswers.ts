import { z } from 'zod'
import { MODES } from '../core/catalogue/category.ts'
import { HOURS_CHOICES } from '../core/quiz/hoursChoice.ts'
import type { QuizAnswers } from '../core/quiz/quizAnswers.ts'
import { MOST_OF_ONE_KIND } from '../core/quiz/writeQuestion.ts'
import { LIMITS, localId, nonNegative, positive, shortText } from './common.ts'
import { householdSchema } from './household.ts'

const readingSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('power'),
      watts: nonNegative(LIMITS.watts).describe('The figure beside W'),
    }),
    z.strictObject({
      kind: z.literal('energy'),
      kilowattHours: nonNegative(LIMITS.kwh / 1000).describe('The figure beside kWh'),
      durationHours: positive(100_000).describe('How long the meter had been counting, h'),
    }),
    z.strictObject({
      kind: z.literal('apparent-power'),
      voltAmperes: nonNegative(LIMITS.watts).describe('The figure beside VA, which is not watts'),
    }),
    z.strictObject({
      kind: z.literal('current'),
      amperes: nonNegative(LIMITS.amperes).describe('The figure beside A; 120 mA are 0.12'),
    }),
  ])
  .meta({ id: 'QuizReading', description: 'What somebody read off a meter, of one device' })

const quizAnswerSchema = z
  .strictObject({
    category: shortText.describe('Code of the category, as the quiz gave it'),
    count: z.int().min(0).max(MOST_OF_ONE_KIND).describe('With 0 the rest of the answer does not count'),
    hours: z.enum(HOURS_CHOICES).optional().describe('usual by default'),
    year: z.int().min(LIMITS.yearFrom).max(LIMITS.yearTo).optional().describe('Year of manufacture'),
    reading: readingSchema.optional(),
    readingMode: z
      .enum(MODES)
      .optional()
      .describe(
        "What the device was doing when it was read; by default the first of the question's readingModes",
      ),
  })
  .meta({ id: 'QuizAnswer' })

/** Body of POST /v1/quiz/answers and input of the GraphQL query `quizEstimate`. */
export const quizAnswersSchema = z
  .strictObject({
    overlayRevision: householdSchema.shape.overlayRevision,
    catalogueRevision: z.int().positive().describe('That of the quiz which these answers are to'),
    tariffCode: localId.optional(),
    emissionFactorCode: localId.optional(),
    answers: z.array(quizAnswerSchema).min(1).max(LIMITS.devices),
  })
  .meta({ id: 'QuizAnswers' }) satisfies z.ZodType<QuizAnswers>

import { z } from 'zod'
import { GROUPS, KEEP_POWERED_REASONS, MODES } from '../core/catalogue/category.ts'
import type { Fault } from '../core/fault.ts'
import { HOURS_CHOICES } from '../core/quiz/hoursChoice.ts'
import { QUIZ_TEXTS, type QuizLanguage } from '../core/quiz/quizLanguage.ts'
import { FIGURE_UNITS, QUIZ_READING_KINDS, type QuizFigure } from '../core/quiz/quizReading.ts'
import { plainText, shortText } from './common.ts'
import { parsedJson } from './parsedJson.ts'
import { readShape } from './readShape.ts'

const sentence = plainText(500).min(1)
const explained = z.strictObject({ label: shortText, help: sentence })

const isTag = (text: string) => {
  try {
    return Intl.getCanonicalLocales(text)[0] === text
  } catch (error) {
    if (error instanceof RangeError) return false
    throw error
  }
}

/** A file of seed/languages. Every key is required but those of categories, which fall back on the catalogue's names. */
const quizLanguageSchema = z.strictObject({
  language: z
    .string()
    .refine(isTag, 'must be a language tag (BCP 47) in its usual spelling, such as de or pt-BR'),
  name: shortText,
  texts: z.record(z.enum(QUIZ_TEXTS), sentence),
  groups: z.record(z.enum(GROUPS), shortText),
  modes: z.record(z.enum(MODES), explained.extend({ advice: sentence })),
  hours: z.record(z.enum(HOURS_CHOICES), explained),
  keepPowered: z.record(z.enum(KEEP_POWERED_REASONS), sentence),
  readings: z.record(z.enum(QUIZ_READING_KINDS), explained),
  figures: z.record(z.enum(Object.keys(FIGURE_UNITS) as QuizFigure[]), shortText),
  categories: z.record(z.string(), z.strictObject({ label: shortText, help: sentence.optional() })),
}) satisfies z.ZodType<QuizLanguage>

/**
 * Reads a language file.
 * @param tag the name of the file, which its `language` must be
 */
export function parseQuizLanguage(
  text: string,
  tag: string,
): { readonly language: QuizLanguage | null; readonly faults: readonly Fault[] } {
  const { value, faults } = readShape(quizLanguageSchema, parsedJson(text))
  if (value === null || value.language === tag) return { language: value, faults }
  const message = `The file is named ${tag}.json, but its language is "${value.language}"; make them the same.`
  return { language: null, faults: [{ pointer: '/language', code: 'other-than-file', message }] }
}

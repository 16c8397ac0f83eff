import { revisionsUsed } from '../catalogue/revisionsUsed.ts'
import type { Catalogue } from '../catalogue/catalogue.ts'
import { GROUPS, MODES } from '../catalogue/category.ts'
import { HOURS_CHOICES } from './hoursChoice.ts'
import type { Quiz, QuizFilter, QuizGroup } from './quiz.ts'
import type { QuizLanguage, QuizLanguages } from './quizLanguage.ts'
import { FIGURE_UNITS, QUIZ_READING_KINDS, QUIZ_READINGS } from './quizReading.ts'
import { writeQuestion } from './writeQuestion.ts'

/** The questions of a self-check: every category in use, or those that the filter names, group by group. */
export function writeQuiz(
  catalogue: Catalogue,
  spoken: QuizLanguage,
  { known, catalogueLanguage }: QuizLanguages,
  filter: QuizFilter = {},
): Quiz {
  const groups = groupsOf(catalogue, { spoken, catalogueLanguage }, filter)
  const sampleData = groups.some(({ questions }) => questions.some((question) => question.sampleData))
  return {
    ...revisionsUsed(catalogue),
    language: spoken.language,
    languages: [...known.values()].map(({ language, name }) => ({ language, name })),
    sampleData,
    sampleDataNotice: sampleData ? spoken.texts.sampleData : null,
    texts: spoken.texts,
    hoursChoices: HOURS_CHOICES.map((choice) => ({ choice, ...spoken.hours[choice] })),
    readings: QUIZ_READING_KINDS.map((kind) => ({
      kind,
      ...spoken.readings[kind],
      figures: QUIZ_READINGS[kind].map((name) => ({
        name,
        label: spoken.figures[name],
        unit: FIGURE_UNITS[name],
      })),
    })),
    modes: MODES.map((mode) => ({ mode, label: spoken.modes[mode].label })),
    groups,
  }
}

/** In the order of the catalogue's groups, and within one in that of the labels as the language sorts them. */
function groupsOf(
  catalogue: Catalogue,
  words: Parameters<typeof writeQuestion>[1],
  { group: only, categories }: QuizFilter,
): readonly QuizGroup[] {
  const { compare } = new Intl.Collator(words.spoken.language)
  const wanted = [...catalogue.categories.values()].filter(
    ({ code, retired }) => !retired && (categories?.includes(code) ?? true),
  )
  return GROUPS.filter((group) => only === undefined || group === only)
    .map((group) => ({
      group,
      label: words.spoken.groups[group],
      questions: wanted
        .filter((category) => category.group === group)
        .map((category) => writeQuestion(category, words))
        .sort((one, other) => compare(one.label, other.label)),
    }))
    .filter(({ questions }) => questions.length > 0)
}

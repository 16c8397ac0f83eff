import type { Category } from '../catalogue/category.ts'
import { hasSampleFigures } from '../catalogue/labelledCategory.ts'
import { askedModes, isAlwaysOn } from './askedModes.ts'
import { HOURS_CHOICES, type HoursChoice, USUAL } from './hoursChoice.ts'
import { labelOf } from './labelOf.ts'
import { modesOfChoice } from './modesOfChoice.ts'
import type { QuizQuestion } from './quiz.ts'
import type { Words } from './quizLanguage.ts'
import { stayOn } from './stayOn.ts'

/** More of one kind than a home has; who has more sends a household to be estimated. */
export const MOST_OF_ONE_KIND = 99

/** What is asked of a kind of device: everything comes from the catalogue, the words from the language. */
export function writeQuestion(category: Category, words: Words): QuizQuestion {
  const modes = askedModes(category)
  const alwaysOn = isAlwaysOn(category)
  const choices: readonly HoursChoice[] = alwaysOn ? [USUAL] : HOURS_CHOICES
  return {
    category: category.code,
    ...labelOf(category, words),
    help: words.spoken.categories[category.code]?.help ?? words.spoken.modes[modes[0]!.mode].help,
    sampleData: hasSampleFigures(category),
    count: { min: 0, max: MOST_OF_ONE_KIND, default: Math.min(category.defaultQuantity, MOST_OF_ONE_KIND) },
    alwaysOn,
    keepPowered: category.keepPowered && stayOn(category.keepPowered, words),
    yearMatters: modes.some(({ draws }) => draws.length > 1),
    hours: choices.map((choice) => ({ choice, modes: modesOfChoice(category, choice) })),
    readingModes: modes.map(({ mode }) => mode),
  }
}

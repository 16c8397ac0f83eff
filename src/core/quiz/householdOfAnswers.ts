import type { Catalogue } from '../catalogue/catalogue.ts'
import type { Category } from '../catalogue/category.ts'
import { DomainError } from '../fault.ts'
import type { Device, DeviceMode, Household } from '../inventory/household.ts'
import { askedModes } from './askedModes.ts'
import { USUAL } from './hoursChoice.ts'
import { labelOf } from './labelOf.ts'
import { modesOfChoice } from './modesOfChoice.ts'
import type { QuizAnswer, QuizAnswers } from './quizAnswers.ts'
import type { Words } from './quizLanguage.ts'
import { readingOf } from './quizReading.ts'

/**
 * The answers as a household to estimate. The id of a device is the place of its answer, from answer-1.
 * @param answers checked by checkQuizAnswers
 * @throws DomainError answers-not-checked
 */
export function householdOfAnswers(
  { catalogueRevision, overlayRevision, tariffCode, emissionFactorCode, answers }: QuizAnswers,
  catalogue: Catalogue,
  words: Words,
): Household {
  const devices = answers.flatMap((answer, index) =>
    answer.count === 0 ? [] : [deviceOf(answer, index, catalogue, words)],
  )
  return {
    catalogueRevision,
    ...(overlayRevision !== undefined && { overlayRevision }),
    ...(tariffCode !== undefined && { tariffCode }),
    ...(emissionFactorCode !== undefined && { emissionFactorCode }),
    devices,
  }
}

function deviceOf(answer: QuizAnswer, index: number, catalogue: Catalogue, words: Words): Device {
  const category = catalogue.categories.get(answer.category)
  if (!category) throw new DomainError('answers-not-checked', 'An answer names no category.')
  const modes = modesOf(answer, category)
  return {
    id: `answer-${index + 1}`,
    label: labelOf(category, words).label,
    category: category.code,
    quantity: answer.count,
    ...(answer.year !== undefined && { year: answer.year }),
    ...(modes && { modes }),
  }
}

/** Null where all of it is left to the catalogue. */
function modesOf(answer: QuizAnswer, category: Category): readonly DeviceMode[] | null {
  const { hours = USUAL, reading, readingMode = askedModes(category)[0]!.mode } = answer
  if (hours === USUAL && reading === undefined) return null
  const modes = modesOfChoice(category, hours)
  if (reading === undefined) return modes
  return modes.map((given) =>
    given.mode === readingMode ? { ...given, reading: readingOf(reading) } : given,
  )
}

import { FaultyInput, type Submitted } from '../core/fault.ts'
import { checkQuizAnswers } from '../core/quiz/checkQuizAnswers.ts'
import { householdOfAnswers } from '../core/quiz/householdOfAnswers.ts'
import type { QuizAnswers } from '../core/quiz/quizAnswers.ts'
import type { QuizResult } from '../core/quiz/quizResult.ts'
import { resultOfAnswers } from '../core/quiz/resultOfAnswers.ts'
import type { Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'
import { estimateHousehold } from './estimateHousehold.ts'
import { settingsNow } from './settingsAt.ts'
import { wordsFor } from './wordsFor.ts'

/**
 * Estimates the household that somebody's answers describe, by the catalogue that they were asked from, and says what
 * follows from it in their language. Nothing is stored.
 * @throws FaultyInput naming every fault of shape and of the trade at once; DomainError unknown-revision, unknown-overlay-revision
 */
export async function answerQuiz(
  deps: Deps,
  sender: Sender,
  language: string,
  submitted: Submitted<QuizAnswers>,
): Promise<QuizResult> {
  const catalogue = await callersCatalogue(deps, sender, submitted.value)
  const faults = [...submitted.faults, ...checkQuizAnswers(submitted.raw, catalogue, settingsNow(deps))]
  if (submitted.value === null || faults.length > 0) throw new FaultyInput(faults)
  const words = wordsFor(deps, language)
  const household = householdOfAnswers(submitted.value, catalogue, words)
  const estimate = await estimateHousehold(deps, sender, { raw: household, value: household, faults: [] })
  return resultOfAnswers(household, estimate, catalogue, words)
}

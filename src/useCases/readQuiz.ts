import { nearestCategories } from '../core/catalogue/findCategory.ts'
import { DomainError } from '../core/fault.ts'
import type { Quiz, QuizFilter } from '../core/quiz/quiz.ts'
import { writeQuiz } from '../core/quiz/writeQuiz.ts'
import type { Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'
import { wordsFor } from './wordsFor.ts'

/**
 * The questions of a self-check from the newest catalogue as the caller sees it, in a language that the service has.
 * @throws DomainError unknown-category where the filter names a code that is not asked for
 */
export async function readQuiz(
  deps: Deps,
  sender: Sender,
  language: string,
  filter: QuizFilter,
): Promise<Quiz> {
  const catalogue = await callersCatalogue(deps, sender, undefined)
  for (const code of filter.categories ?? []) {
    const category = catalogue.categories.get(code)
    if (category && !category.retired) continue
    const nearest = nearestCategories(catalogue, code).map((near) => ({ code: near.code, name: near.name }))
    throw new DomainError(
      'unknown-category',
      `The quiz asks for no category with the code "${code}". The nearest are: ${nearest.map((near) => near.code).join(', ')}.`,
      { nearest },
    )
  }
  return writeQuiz(catalogue, wordsFor(deps, language).spoken, deps.quizLanguages, filter)
}

import type { RestContext } from '../restContext.ts'
import type { RestApp } from '../submitted.ts'
import { getQuiz } from './getQuiz.ts'
import { postQuizAnswers } from './postQuizAnswers.ts'

/** The routes of the self-check. */
export const QUIZ_ROUTES: readonly ((app: RestApp, context: RestContext) => void)[] = [
  getQuiz,
  postQuizAnswers,
]

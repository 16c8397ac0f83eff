import { quizAnswersSchema } from '../../../schemas/quizAnswers.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { answerQuiz } from '../../../useCases/answerQuiz.ts'
import { readQuiz } from '../../../useCases/readQuiz.ts'
import { negotiateLanguage } from '../../negotiateLanguage.ts'
import { builder } from '../builder.ts'
import { householdOfInput } from '../householdOfInput.ts'
import { QuizAnswersInput } from '../inputs/quiz.ts'
import { COST_OF_ONE_DEVICE, LIST_COST } from '../limits.ts'
import { GroupEnum } from '../types/enums.ts'
import { QuizType } from '../types/quiz.ts'
import { QuizResultType } from '../types/quizResult.ts'
import { withPointersInto } from '../withPointersInto.ts'

const ACCEPT_LANGUAGE =
  'Languages in the order of liking, as in the header of that name, such as "de-AT, en;q=0.5"; the language of the catalogue by default.'

builder.queryFields((t) => ({
  quiz: t.field({
    type: QuizType,
    nullable: true,
    description: 'The questions of a self-check, from the newest catalogue.',
    args: {
      acceptLanguage: t.arg.string({ description: ACCEPT_LANGUAGE }),
      group: t.arg({ type: GroupEnum, description: 'Only this part of the home.' }),
      categories: t.arg.stringList({ description: 'Only the categories with these codes.' }),
    },
    resolve: (_root, { acceptLanguage, group, categories }, { deps, sender }) =>
      readQuiz(deps, sender, negotiateLanguage(acceptLanguage ?? undefined, deps), {
        group: group ?? undefined,
        categories: categories ?? undefined,
      }),
  }),
  quizEstimate: t.field({
    type: QuizResultType,
    nullable: true,
    description:
      'The answers to the quiz as a household, its estimate, and what follows from it. Nothing is stored. Bad input is one error with code BAD_USER_INPUT whose extensions name every fault.',
    args: {
      input: t.arg({ type: QuizAnswersInput, required: true, description: 'The answers.' }),
      acceptLanguage: t.arg.string({ description: ACCEPT_LANGUAGE }),
    },
    complexity: ({ input: { answers } }) => ({
      field: answers.length * COST_OF_ONE_DEVICE,
      multiplier: Math.max(answers.length / LIST_COST, 1),
    }),
    resolve: (_root, { input, acceptLanguage }, { deps, sender }) =>
      withPointersInto(input, () =>
        answerQuiz(
          deps,
          sender,
          negotiateLanguage(acceptLanguage ?? undefined, deps),
          readShape(quizAnswersSchema, householdOfInput(input)),
        ),
      ),
  }),
}))

import { quizAnswersSchema } from '../../../schemas/quizAnswers.ts'
import { quizResultSchema } from '../../../schemas/quizResult.ts'
import { answerQuiz } from '../../../useCases/answerQuiz.ts'
import { negotiateLanguage } from '../../negotiateLanguage.ts'
import { jsonAnswer } from '../answers.ts'
import { mayEstimate } from '../authorize.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import { senderOf } from '../senderOf.ts'
import type { RestContext } from '../restContext.ts'
import { noQuery, queryFaults, type RestApp } from '../submitted.ts'
import { exampleQuizResult } from './examples.ts'

export function postQuizAnswers(app: RestApp, { deps, anonymousEstimates }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/quiz/answers',
    config: { publishable: true, conditions: ['Accept-Language'] },
    schema: {
      operationId: 'answerQuiz',
      tags: ['quiz'],
      summary: 'Estimate a home from the answers to the quiz',
      description:
        'Answers with the household that the answers describe (a body of POST /v1/estimates), its estimate, up to three ' +
        'devices that are most worth doing something about, and what must stay on with the reason. Estimated by the ' +
        'catalogue revision that the questions came from, whatever was edited since. Apparent power and current are never ' +
        'taken for watts: they give a range. Nothing is stored.',
      querystring: noQuery,
      body: quizAnswersSchema,
      response: {
        200: jsonAnswer('The estimate and what follows from it', quizResultSchema, exampleQuizResult, {
          'Content-Language': {
            type: 'string',
            description: 'The language that was chosen by Accept-Language',
          },
        }),
        ...problemAnswers(
          ...NEEDS_BODY,
          ...NEEDS_KEY,
          'foreign-origin',
          'unknown-revision',
          'unknown-overlay-revision',
        ),
      },
    },
    onRequest: mayEstimate(anonymousEstimates),
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const { body, query, headers } = request
      const language = negotiateLanguage(headers['accept-language'], deps)
      const submitted = { ...body, faults: [...queryFaults(query), ...body.faults] }
      const result = await answerQuiz(deps, senderOf(request), language, submitted)
      reply.headers({
        'cache-control': 'no-store',
        'content-language': result.language,
        vary: 'accept, accept-language',
      })
      return result
    },
  })
}

import { quizQuerySchema, quizSchema } from '../../../schemas/quiz.ts'
import { readQuiz } from '../../../useCases/readQuiz.ts'
import { negotiateLanguage } from '../../negotiateLanguage.ts'
import { CATALOGUE_HEADERS, jsonAnswer, notModified } from '../answers.ts'
import { ownFigures, quizTag, sendTagged } from '../conditional.ts'
import { problemAnswers } from '../problem.ts'
import { senderOf } from '../senderOf.ts'
import type { RestContext } from '../restContext.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleQuiz } from './quizExample.ts'

const HEADERS = {
  ...CATALOGUE_HEADERS,
  ETag: { type: 'string', description: 'Tag of catalogue revision and language; send it as If-None-Match' },
  'Content-Language': { type: 'string', description: 'The language that was chosen by Accept-Language' },
} as const

export function getQuiz(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/quiz',
    config: { publishable: true, conditions: ['Accept-Language'] },
    schema: {
      operationId: 'readQuiz',
      tags: ['quiz'],
      summary: 'Read the questions of a self-check',
      description:
        'Everything that a website needs to ask somebody about a home, from the newest catalogue, in the language that ' +
        'Accept-Language likes best of those there are: group by group the kinds of devices with label, help, count, ' +
        'whether hours are asked, the choices of hours and what each stands for, and how to give a reading. Devices that ' +
        'must stay powered are asked for, too, and say why. The answers go to POST /v1/quiz/answers, or, turned into a ' +
        'household, to POST /v1/estimates.',
      querystring: quizQuerySchema,
      response: {
        200: jsonAnswer('The questions', quizSchema, exampleQuiz, HEADERS),
        304: notModified,
        ...problemAnswers('foreign-origin', 'unknown-category'),
      },
    },
    handler: async (request, reply) => {
      const { group, categories } = fitting(request.query)
      const language = negotiateLanguage(request.headers['accept-language'], deps)
      const quiz = await readQuiz(deps, senderOf(request), language, {
        group,
        categories: categories?.split(','),
      })
      reply.header('content-language', quiz.language)
      const { catalogueRevision, overlayRevision } = quiz
      const own = ownFigures(request, overlayRevision)
      const tag = quizTag(catalogueRevision, quiz.language, deps.quizLanguages.fingerprint, own)
      return sendTagged(
        request,
        reply,
        { tag, catalogueRevision, overlayRevision, vary: 'accept, accept-language' },
        quiz,
      )
    },
  })
}

import { readingEvaluationSchema, readingToEvaluateSchema } from '../../schemas/readingEvaluation.ts'
import { evaluateReading } from '../../useCases/evaluateReading.ts'
import { jsonAnswer } from './answers.ts'
import { mayEstimate } from './authorize.ts'
import { bodyRequired } from './bodyRequired.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from './problem.ts'
import { exampleReadingEvaluation } from './readingExamples.ts'
import type { RestContext } from './restContext.ts'
import { senderOf } from './senderOf.ts'
import { noQuery, queryFaults, type RestApp } from './submitted.ts'

export function postReadingEvaluation(app: RestApp, { deps, anonymousEstimates }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/readings/evaluate',
    schema: {
      operationId: 'evaluateReading',
      tags: ['estimates'],
      summary: 'Turn one reading into real power, and learn how',
      description:
        'Real power with its interval and flag, apparent and non-active power where they exist, what was assumed, and each ' +
        'step in words and formula: why volts times amperes are not watts, what a splitter does, whether a series is ' +
        'stable. Says what makes the reading hard to believe, and whether the meter is good enough for it. Only the reading ' +
        'is required; a category gives its power factor and usual draw. Nothing is stored.',
      querystring: noQuery,
      body: readingToEvaluateSchema,
      response: {
        200: jsonAnswer('The evaluation', readingEvaluationSchema, exampleReadingEvaluation),
        ...problemAnswers(...NEEDS_BODY, ...NEEDS_KEY, 'unknown-revision', 'unknown-overlay-revision'),
      },
    },
    onRequest: mayEstimate(anonymousEstimates),
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const { body, query } = request
      reply.header('cache-control', 'no-store')
      return evaluateReading(deps, senderOf(request), {
        ...body,
        faults: [...queryFaults(query), ...body.faults],
      })
    },
  })
}

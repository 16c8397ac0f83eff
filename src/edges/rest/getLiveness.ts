import { z } from 'zod'
import { jsonAnswer } from './answers.ts'
import { unlimitedProblemAnswers } from './problem.ts'
import { fitting, noQuery, type RestApp } from './submitted.ts'

const livenessSchema = z.strictObject({ status: z.literal('live') }).meta({ id: 'Liveness' })

export function getLiveness(app: RestApp): void {
  app.route({
    method: 'GET',
    url: '/health/live',
    config: { unlimited: true },
    schema: {
      operationId: 'readLiveness',
      tags: ['service'],
      summary: 'Whether the process answers',
      description:
        'Asks neither the database nor the catalogue: a process that answers is not to be restarted.',
      querystring: noQuery,
      response: {
        200: jsonAnswer('It answers', livenessSchema, { status: 'live' }),
        ...unlimitedProblemAnswers(),
      },
    },
    handler: async (request, reply) => {
      fitting(request.query)
      reply.header('cache-control', 'no-store')
      return { status: 'live' }
    },
  })
}

import { measureListSchema, measureQuerySchema } from '../../../schemas/savingsMeasure.ts'
import { listMeasures } from '../../../useCases/listMeasures.ts'
import { jsonAnswer } from '../answers.ts'
import { problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleMeasureList } from './examples.ts'

export function getSavingsMeasures(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/savings-measures',
    schema: {
      operationId: 'listSavingsMeasures',
      tags: ['savings'],
      summary: 'List what a household can do about standby',
      description:
        'Switching off at the outlet, switchable strips, timers, settings and replacements, in the order in which plans ' +
        'offer them, each with price, life, own draw and how far habits last. All of it is invented sample data: a plan ' +
        'names a measure by its code and brings figures of its own.',
      querystring: measureQuerySchema,
      response: {
        200: jsonAnswer('The measures', measureListSchema, exampleMeasureList),
        ...problemAnswers(),
      },
    },
    handler: async (request, reply) => {
      const { kind } = fitting(request.query)
      reply.header('cache-control', 'no-cache')
      return {
        items: listMeasures(deps, kind).map((measure) => ({
          ...measure,
          categories: [...measure.categories],
        })),
      }
    },
  })
}

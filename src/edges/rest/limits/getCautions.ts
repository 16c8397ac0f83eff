import { cautionListSchema, cautionQuerySchema } from '../../../schemas/caution.ts'
import { listCautions } from '../../../useCases/listCautions.ts'
import { jsonAnswer } from '../answers.ts'
import { problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleCautionList } from './examples.ts'

export function getCautions(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/cautions',
    schema: {
      operationId: 'listCautions',
      tags: ['limits and cautions'],
      summary: 'List the safety statements that answers carry',
      description:
        'In the order in which they are shown, each with the answers that it goes with, its source, and how well that is ' +
        'confirmed. appliesTo gives those of one kind of answer.',
      querystring: cautionQuerySchema,
      response: {
        200: jsonAnswer('The cautions', cautionListSchema, exampleCautionList),
        ...problemAnswers(),
      },
    },
    handler: async (request, reply) => {
      const { appliesTo } = fitting(request.query)
      reply.header('cache-control', 'no-cache')
      return {
        items: listCautions(deps, appliesTo).map((caution) => ({
          ...caution,
          appliesTo: [...caution.appliesTo],
        })),
      }
    },
  })
}

import { z } from 'zod'
import { jsonAnswer } from './answers.ts'
import { problemAnswers } from './problem.ts'
import { fitting, noQuery, type RestApp } from './submitted.ts'

const documentSchema = z.looseObject({ openapi: z.string() }).meta({ id: 'OpenApiDocument' })

export function getOpenApi(app: RestApp): void {
  app.route({
    method: 'GET',
    url: '/openapi.json',
    schema: {
      operationId: 'readOpenApi',
      tags: ['service'],
      summary: 'This description of the API, in OpenAPI 3.1',
      description: 'Made from the same schemas that check requests and answers. /docs shows it as a page.',
      querystring: noQuery,
      response: {
        200: jsonAnswer('The document', documentSchema, { openapi: '3.1.0' }),
        ...problemAnswers(),
      },
    },
    handler: async (request) => {
      fitting(request.query)
      return app.swagger()
    },
  })
}

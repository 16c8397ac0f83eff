import { z } from 'zod'
import { namedEmissionFactorSchema } from '../../../schemas/emissionFactor.ts'
import { readEmissionFactor } from '../../../useCases/readEmissionFactor.ts'
import { jsonAnswer } from '../answers.ts'
import { problemAnswers, unknownPath } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { fitting, noQuery, type RestApp } from '../submitted.ts'
import { exampleEmissionFactor } from './examples.ts'

const params = z.strictObject({ code: z.string().describe('Code, such as world-2023') })

export function getEmissionFactor(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/emission-factors/:code',
    schema: {
      operationId: 'readEmissionFactor',
      tags: ['money and grid'],
      summary: 'Read one emission factor by its code',
      description: 'An unknown code is answered with those that there are.',
      params,
      querystring: noQuery,
      response: {
        200: jsonAnswer('The emission factor', namedEmissionFactorSchema, exampleEmissionFactor),
        ...problemAnswers('unknown-emission-factor', 'unknown-path', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      fitting(request.query)
      const { value } = request.params
      if (value === null) throw unknownPath()
      reply.header('cache-control', 'no-cache')
      return readEmissionFactor(deps, value.code)
    },
  })
}

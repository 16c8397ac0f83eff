import { z } from 'zod'
import { namedTariffSchema } from '../../../schemas/tariff.ts'
import { readTariff } from '../../../useCases/readTariff.ts'
import { jsonAnswer } from '../answers.ts'
import { problemAnswers, unknownPath } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { fitting, noQuery, type RestApp } from '../submitted.ts'
import { exampleTariff } from './examples.ts'

const params = z.strictObject({ code: z.string().describe('Code, such as sample-flat-eur') })

export function getTariff(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/tariffs/:code',
    schema: {
      operationId: 'readTariff',
      tags: ['money and grid'],
      summary: 'Read one tariff by its code',
      description: 'An unknown code is answered with those that there are.',
      params,
      querystring: noQuery,
      response: {
        200: jsonAnswer('The tariff', namedTariffSchema, exampleTariff),
        ...problemAnswers('unknown-tariff', 'unknown-path', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      fitting(request.query)
      const { value } = request.params
      if (value === null) throw unknownPath()
      reply.header('cache-control', 'no-cache')
      return readTariff(deps, value.code)
    },
  })
}

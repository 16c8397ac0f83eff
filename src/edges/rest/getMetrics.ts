import type { FastifyInstance } from 'fastify'
import { authorizeOperator } from '../../useCases/authorize.ts'
import type { Metrics } from './metrics.ts'
import { senderOf } from './senderOf.ts'

/**
 * Counts every request, and shows what was counted at /metrics. Like /docs it is for whoever runs the service and no part
 * of the API, so that the document does not list it.
 *
 * @param isOpen whether anybody may read it; where not, admin keys of the organisation that runs the service may
 */
export function addMetrics(app: FastifyInstance, metrics: Metrics, isOpen: boolean): void {
  app.addHook('onResponse', async ({ method, routeOptions }, { statusCode: status, elapsedTime }) => {
    metrics.countRequest({
      method,
      route: routeOptions.url ?? 'unknown path',
      status,
      seconds: elapsedTime / 1000,
    })
  })
  app.route({
    method: 'GET',
    url: '/metrics',
    config: { unlimited: true },
    schema: { hide: true },
    onRequest: async (request) => {
      if (!isOpen) authorizeOperator(senderOf(request), 'admin')
    },
    handler: async (_, reply) => {
      const { text, type } = await metrics.read()
      return reply.header('cache-control', 'no-store').type(type).send(text)
    },
  })
}

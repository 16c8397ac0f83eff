import type { FastifyInstance } from 'fastify'

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Whether a body may take as long as it likes to arrive; for routes that answer while it does. */
    readonly arrivesSlowly?: boolean
  }
}

/**
 * A caller that sends a byte now and then must not hold a connection: a body arrives in time or not at all. Node's own
 * requestTimeout cannot be lifted for the one route that takes a stream in (there a connection ends when nothing moves on it,
 * see connectionTimeout); what happens then is the same, see refuseGarbage.
 */
export function limitArrival(app: FastifyInstance, arrivalMs: number): void {
  app.addHook('onRequest', async ({ raw, routeOptions }, reply) => {
    if (routeOptions.config.arrivesSlowly || raw.complete) return
    const late = setTimeout(() => {
      // What is there and not read yet has arrived.
      if (raw.complete) return
      const error = Object.assign(new Error('The request did not arrive in time.'), {
        code: 'ERR_HTTP_REQUEST_TIMEOUT',
      })
      app.server.emit('clientError', error, raw.socket)
    }, arrivalMs)
    const inTime = () => clearTimeout(late)
    raw.once('end', inTime)
    reply.raw.once('close', inTime)
  })
}

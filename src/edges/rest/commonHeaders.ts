import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'

/**
 * What every answer carries. Answers are data and never pages, so the policy lets a browser that shows one load
 * nothing at all; /docs, the one page, brings its own policy.
 */
const HEADERS = {
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'content-security-policy':
    "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
}

export function setCommonHeaders(request: FastifyRequest, reply: FastifyReply): void {
  reply.headers(HEADERS).header('x-request-id', request.id)
}

export function addCommonHeaders(app: FastifyInstance): void {
  app.addHook('onRequest', async (request, reply) => setCommonHeaders(request, reply))
}

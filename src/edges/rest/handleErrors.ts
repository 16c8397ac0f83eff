import type { FastifyInstance, FastifyReply, FastifyRequest, HTTPMethods } from 'fastify'
import { DomainError } from '../../core/fault.ts'
import { setCommonHeaders } from './commonHeaders.ts'
import { sendProblem, unknownPath } from './problem.ts'

/** Makes every answer of 400 and above a problem answer: thrown errors, unknown addresses and wrong methods. */
export function handleErrors(app: FastifyInstance): void {
  app.setErrorHandler((error, request, reply) => sendProblem(request, reply, error))
  app.setNotFoundHandler((request, reply) => answerNotFound(app, request, reply))
  refuseWhileStopping(app)
}

/** An address that has other methods: OPTIONS is told them, anything else is refused with them (RFC 9110, 15.5.6). */
function answerNotFound(app: FastifyInstance, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  const [path = '/'] = request.url.split('?', 1)
  const methods = app.supportedMethods.filter((method) => hasRoute(app, method, path))
  if (methods.length === 0 || methods.some((method) => method === request.method))
    return sendProblem(request, reply, unknownPath())
  const allowed = [...methods, 'OPTIONS'].join(', ')
  reply.header('allow', allowed)
  if (request.method === 'OPTIONS') return reply.code(204).send()
  const message = `This address does not have the method ${request.method}; it has ${allowed}.`
  return sendProblem(request, reply, new DomainError('method-not-allowed', message))
}

/** Whether a concrete address has a method. (The router's own type leaves out that it finds null.) */
function hasRoute(app: FastifyInstance, method: HTTPMethods, url: string): boolean {
  const found: unknown = app.findRoute({ method, url })
  return found !== null
}

/** An address that the router cannot read. No hook has run for it, so what hooks do otherwise is done here. */
export function refuseUnroutable(error: Error, request: FastifyRequest, reply: FastifyReply): void {
  setCommonHeaders(request, reply)
  sendProblem(request, reply, error)
  request.log.info({ method: request.method, status: reply.statusCode }, 'unreadable address refused')
}

/** What the framework itself would answer here is not a problem answer and does not say when to come back. */
function refuseWhileStopping(app: FastifyInstance): void {
  let stopping = false
  app.addHook('preClose', async () => {
    stopping = true
  })
  app.addHook('onRequest', async () => {
    if (stopping) throw new DomainError('stopping', 'The service is stopping and takes no new requests.')
  })
}

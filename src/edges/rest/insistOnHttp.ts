import type { IncomingMessage, ServerResponse } from 'node:http'
import type { FastifyInstance } from 'fastify'
import { DomainError } from '../../core/fault.ts'
import { translate } from '../errors.ts'
import { rawProblem } from './rawProblem.ts'
import { requestIdOf } from './requestId.ts'

/** Requests that node can read but must be refused by HTTP itself; node alone would do so with an empty answer. */
export function insistOnHttp(app: FastifyInstance): void {
  app.addHook('onRequest', async ({ raw }) => {
    if (raw.httpVersion === '1.1' && raw.headers.host === undefined)
      throw new DomainError('malformed-request', 'An HTTP/1.1 request names its Host.')
  })
  app.server.on('checkExpectation', (request: IncomingMessage, response: ServerResponse) => {
    const refusal = new DomainError('unknown-expectation', 'Of Expect, only 100-continue is understood here.')
    const { status, headers, body } = rawProblem(translate(refusal), requestIdOf(request))
    response.writeHead(status, headers).end(body)
  })
}

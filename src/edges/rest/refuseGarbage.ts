import { randomUUID } from 'node:crypto'
import { STATUS_CODES } from 'node:http'
import type { Socket } from 'node:net'
import type { FastifyInstance } from 'fastify'
import { translateParserError } from '../errors.ts'
import { rawProblem } from './rawProblem.ts'

/**
 * Answers bytes that node's HTTP parser refused. There is no request and no reply then, only a socket, which may
 * be gone; what is written is a whole HTTP answer by hand, and the connection ends with it.
 */
export function refuseGarbage(this: FastifyInstance, error: Error & { code?: string }, socket: Socket): void {
  if (error.code === 'ECONNRESET' || !socket.writable) {
    socket.destroy()
    return
  }
  const requestId = randomUUID()
  const { status, headers, body } = rawProblem(translateParserError(error.code), requestId)
  this.log.info({ requestId, status, reason: error.code }, 'unreadable request refused')
  const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}`)
  socket.end([`HTTP/1.1 ${status} ${STATUS_CODES[status]}`, ...lines, '', body].join('\r\n'))
}

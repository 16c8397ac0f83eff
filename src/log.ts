import { type FastifyBaseLogger, type FastifyReply, type FastifyRequest, LogController } from 'fastify'
import { type Bindings, type ChildLoggerOptions, type DestinationStream, type Logger, pino } from 'pino'
import type { Config } from './config.ts'

/**
 * A net below the rule that bodies, queries, keys and addresses are not given to the logger at all: whatever
 * goes by one of these names is taken out, at the top and one level down.
 */
const NEVER_LOGGED = [
  'body',
  'query',
  'headers',
  'authorization',
  'cookie',
  'password',
  'url',
  'remoteAddress',
]

/** JSON lines with the level by name and the time in ISO 8601, without the machine's name. */
export function createLog(level: Config['LOG_LEVEL'], destination?: DestinationStream): Logger {
  const options = {
    level,
    base: null,
    timestamp: pino.stdTimeFunctions.isoTime,
    formatters: { level: (label: string) => ({ level: label }) },
    redact: { paths: NEVER_LOGGED.flatMap((name) => [name, `*.${name}`]), censor: '[not logged]' },
  }
  return destination ? pino(options, destination) : pino(options)
}

/** The log of one request: all its lines carry its id, and that of the trace that it is part of where it names one. */
export const requestLogOf = (
  log: FastifyBaseLogger,
  bindings: Bindings,
  options: ChildLoggerOptions,
  traceId: string | null,
): FastifyBaseLogger => log.child({ ...bindings, ...(traceId !== null && { traceId }) }, options)

/**
 * What is said of a request: one line at its end, with the route's pattern instead of the address, since an
 * address may hold what a caller typed. A caller's mistake is information; only our own failure is an error.
 */
export class RequestLog extends LogController {
  constructor() {
    super({ requestIdLogLabel: 'requestId' })
  }

  override incomingRequest(): void {
    // Said once, at the end, with the outcome.
  }

  override requestCompleted(
    error: Error | null | undefined,
    request: FastifyRequest,
    reply: FastifyReply,
  ): void {
    const outcome = {
      method: request.method,
      route: request.routeOptions.url ?? 'unknown path',
      status: reply.statusCode,
      durationMs: Math.round(reply.elapsedTime * 10) / 10,
    }
    if (error)
      request.log.info({ ...outcome, reason: error.message }, 'connection lost before the answer was sent')
    else if (reply.statusCode >= 500) request.log.error(outcome, 'request failed')
    else request.log.info(outcome, 'request answered')
  }
}

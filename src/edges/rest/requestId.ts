import { randomUUID } from 'node:crypto'
import type { IncomingMessage } from 'node:http'

/** A caller's own X-Request-Id where it can be logged and repeated safely, else a new one. */
export function requestIdOf(request: IncomingMessage): string {
  const given = request.headers['x-request-id']
  return typeof given === 'string' && /^[A-Za-z0-9._-]{1,64}$/.test(given) ? given : randomUUID()
}

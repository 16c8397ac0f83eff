import type { Translated } from '../errors.ts'
import { PROBLEM_TYPE, problemBody } from './problem.ts'

/** A problem answer for where there is no framework's reply to send it with. The connection ends with it. */
export function rawProblem(translated: Translated, requestId: string) {
  const body = JSON.stringify(problemBody(translated, requestId))
  const headers = {
    'Content-Type': PROBLEM_TYPE,
    'Content-Length': String(Buffer.byteLength(body)),
    'Cache-Control': 'no-store',
    'X-Content-Type-Options': 'nosniff',
    'X-Request-Id': requestId,
    Connection: 'close',
  }
  return { status: translated.status, headers, body }
}

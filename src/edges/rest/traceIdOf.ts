import type { IncomingMessage } from 'node:http'

const NOTHING = /^0+$/

/**
 * The id of the trace that a request is part of, by its `traceparent`; null where there is none, or one that the standard
 * says to ignore: of version ff, with capital letters, with ids of zeros, or of another length. A later version may say
 * more behind what version 00 has.
 * Source: W3C Trace Context (Recommendation), 3.2 Traceparent Header, and its "Versioning of traceparent".
 */
export function traceIdOf({ headers: { traceparent } }: Pick<IncomingMessage, 'headers'>): string | null {
  if (typeof traceparent !== 'string') return null
  const parts = /^([0-9a-f]{2})-([0-9a-f]{32})-([0-9a-f]{16})-[0-9a-f]{2}(-.*)?$/.exec(traceparent)
  if (parts === null) return null
  const [, version, traceId = '', parentId = '', more] = parts
  if (version === 'ff' || (version === '00' && more !== undefined)) return null
  return NOTHING.test(traceId) || NOTHING.test(parentId) ? null : traceId
}

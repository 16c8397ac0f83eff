import type { FastifyContextConfig } from 'fastify'

declare module 'fastify' {
  interface FastifyContextConfig {
    /** The headers that a route looks at: preconditions (RFC 9110, 13.1), Accept-Language and Idempotency-Key. */
    readonly conditions?: readonly (keyof typeof CONDITIONS)[]
  }
}

const CONDITIONS = {
  'Accept-Language':
    'Languages in the order of liking (RFC 9110, 12.5.4); where none of them is there, the answer is in that of the catalogue',
  'Idempotency-Key':
    'A key of your own for this request: sent again within 24 hours it is answered again and has no second effect; 422 where another request came with it, 409 while the first is under way',
  'If-Match':
    'ETag of what was read, which the edit is based on; 428 where it is missing, 412 where it is stale',
  'If-None-Match': '* where there must be nothing yet, in place of If-Match',
} as const

/**
 * What the description of a route's request needs besides its schemas: headers, which no schema
 * checks, and a body that is not JSON.
 */
export function requestParts(
  { body }: { readonly body?: unknown },
  { conditions = [], reads = [] }: FastifyContextConfig,
) {
  const properties = Object.fromEntries(
    conditions.map((name) => [name, { type: 'string', description: CONDITIONS[name] }]),
  )
  const content = Object.fromEntries(
    reads.map((type) => [type, { schema: type.endsWith('json') ? body : { type: 'string' } }]),
  )
  return {
    ...(conditions.length > 0 && { headers: { type: 'object', properties } }),
    ...(reads.length > 0 && { body: { content } }),
  }
}

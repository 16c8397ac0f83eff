import type { FastifyReply, FastifyRequest } from 'fastify'

/**
 * Counts the ways in which catalogue answers have been written; one more whenever a field of them changes, so
 * that a copy kept from before an upgrade is not taken for a fresh one.
 */
const REPRESENTATION = 'json1'

/** The tag of anything read from the catalogue: a revision never changes, so its number is enough. */
const tagOf = (catalogueRevision: number) => `"r${catalogueRevision}.${REPRESENTATION}"`

/**
 * True where If-None-Match names the tag (RFC 9110, 13.1.2: a list or `*`, compared weakly). Ask only once the
 * answer would be 200: a condition never turns an error into 304.
 */
function isKept(header: string | undefined, tag: string): boolean {
  if (header === undefined) return false
  if (header.trim() === '*') return true
  return header.match(/"[^"]*"/g)?.includes(tag) ?? false
}

/** Sends a catalogue answer with its tag, or 304 where the caller has it already. */
export function sendTagged(
  request: FastifyRequest,
  reply: FastifyReply,
  catalogueRevision: number,
  answer: unknown,
): FastifyReply {
  const tag = tagOf(catalogueRevision)
  reply.headers({
    etag: tag,
    'cache-control': 'no-cache',
    vary: 'accept',
    'catalogue-revision': catalogueRevision,
  })
  return isKept(request.headers['if-none-match'], tag) ? reply.code(304).send() : reply.send(answer)
}

import type { FastifyReply, FastifyRequest } from 'fastify'
import type { ReferenceKind } from '../../core/reference/referenceEntry.ts'

/** The ways in which an answer from the catalogue is written. */
export type Form = 'json' | 'csv'

/**
 * Counts the ways in which catalogue answers have been written; one more whenever a field of them changes, so
 * that a copy kept from before an upgrade is not taken for a fresh one, nor sent back as one.
 */
const REPRESENTATION: Readonly<Record<Form, string>> = { json: 'json1', csv: 'csv1' }

/** The tag of anything read from the catalogue as a whole: a revision never changes, so its number is enough. */
export const catalogueTag = (revision: number, form: Form = 'json') =>
  `"r${revision}.${REPRESENTATION[form]}"`

/** The tag of what leads from one revision to another. */
export const comparisonTag = (from: number, to: number) => `"r${from}-r${to}.${REPRESENTATION.json}"`

/** The tag of one category: by the revision that gave it its present state, so that edits elsewhere leave it fresh. */
export const categoryTag = (code: string, changedIn: number) =>
  `"${code}.r${changedIn}.${REPRESENTATION.json}"`

/** The tag of one inventory: a version never changes. */
export const inventoryTag = ({ id, version }: { readonly id: string; readonly version: number }) =>
  `"${id}.v${version}.${REPRESENTATION.json}"`

/** What an answer about one organisation's household says of itself: it is for this caller alone, and to be asked for again. */
export const inventoryHeaders = (inventory: { readonly id: string; readonly version: number }) => ({
  etag: inventoryTag(inventory),
  'cache-control': 'private, no-cache',
  vary: 'accept, authorization',
})

/** The tag of the quiz: by what it is made from, the catalogue and the words of a language. */
export const quizTag = (revision: number, language: string, fingerprint: string) =>
  `"r${revision}.${language}.${fingerprint}.${REPRESENTATION.json}"`

/**
 * True where If-None-Match names the tag (RFC 9110, 13.1.2: a list or `*`, compared weakly). Ask only once the
 * answer would be 200: a condition never turns an error into 304.
 */
function isKept(header: string | undefined, tag: string): boolean {
  if (header === undefined) return false
  if (header.trim() === '*') return true
  return header.match(/"[^"]*"/g)?.includes(tag) ?? false
}

/** The tag of one tariff or emission factor: by the revision that gave it its present state. */
export const referenceTag = (kind: ReferenceKind, code: string, changedIn: number) =>
  `"${kind}.${code}.r${changedIn}.${REPRESENTATION.json}"`

/** The tag of anything read from all tariffs or emission factors of a revision. */
export const referenceDataTag = (revision: number) => `"reference.r${revision}.${REPRESENTATION.json}"`

/** What an answer from the catalogue, or from tariffs and emission factors, says of itself. */
export type Tagged = {
  readonly tag: string
  /** The request headers that chose among answers; Accept alone where nothing is said. */
  readonly vary?: string
} & ({ readonly catalogueRevision: number } | { readonly referenceRevision: number })

export const tagHeaders = (tagged: Tagged) => ({
  etag: tagged.tag,
  'cache-control': 'no-cache',
  vary: tagged.vary ?? 'accept',
  ...('catalogueRevision' in tagged
    ? { 'catalogue-revision': tagged.catalogueRevision }
    : { 'reference-revision': tagged.referenceRevision }),
})

/** Sends such an answer with its tag, or 304 where the caller has it already. */
export const sendTagged = (
  request: FastifyRequest,
  reply: FastifyReply,
  tagged: Tagged,
  answer: unknown,
): FastifyReply => sendUnlessKept(request, reply, tagHeaders(tagged), answer)

/** Sends an answer with its headers, or these with 304 where the caller has the answer already. */
export function sendUnlessKept(
  request: FastifyRequest,
  reply: FastifyReply,
  headers: { readonly etag: string } & Readonly<Record<string, string | number>>,
  answer: unknown,
): FastifyReply {
  reply.headers(headers)
  return isKept(request.headers['if-none-match'], headers.etag) ? reply.code(304).send() : reply.send(answer)
}

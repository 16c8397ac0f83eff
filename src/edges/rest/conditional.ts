import type { FastifyReply, FastifyRequest } from 'fastify'
import type { ReferenceKind } from '../../core/reference/referenceEntry.ts'

/** The ways in which an answer from the catalogue is written. */
export type Form = 'json' | 'csv'

/**
 * Counts the ways in which catalogue answers have been written; one more whenever a field of them changes, so
 * that a copy kept from before an upgrade is not taken for a fresh one, nor sent back as one.
 */
const REPRESENTATION: Readonly<Record<Form, string>> = { json: 'json2', csv: 'csv1' }

/** The figures of the caller's organisation that an answer holds. */
export interface OwnFigures {
  readonly organisation: string
  readonly overlayRevision: number
}

/** Those that an answer to a request holds, where it holds any. */
export const ownFigures = ({ caller }: FastifyRequest, overlayRevision: number): OwnFigures | null =>
  caller && overlayRevision > 0 ? { organisation: caller.organisation, overlayRevision } : null

/** Names them in a tag: two organisations count their revisions alike, and neither may be told that it has the other's. */
const partOf = (own: OwnFigures | null) => (own ? `.${own.organisation}-o${own.overlayRevision}` : '')

/** The tag of anything read from the catalogue as a whole: a revision never changes, so its number is enough. */
export const catalogueTag = (revision: number, form: Form = 'json', own: OwnFigures | null = null) =>
  `"r${revision}${partOf(own)}.${REPRESENTATION[form]}"`

/** The tag of what leads from one revision to another. */
export const comparisonTag = (from: number, to: number) => `"r${from}-r${to}.${REPRESENTATION.json}"`

/** The tag of one category: by the revision that gave it its present state, so that edits elsewhere leave it fresh. */
export const categoryTag = (code: string, changedIn: number) =>
  `"${code}.r${changedIn}.${REPRESENTATION.json}"`

/** The tag of one inventory: a version never changes. */
export const inventoryTag = ({ id, version }: { readonly id: string; readonly version: number }) =>
  `"${id}.v${version}.${REPRESENTATION.json}"`

/** The tag of a proposal: by its version, which names the category's state and what the readings say. */
export const proposalTag = (address: string, version: string) =>
  `"${address}.p${version}.${REPRESENTATION.json}"`

/** What an answer about one organisation's household says of itself: it is for this caller alone, and to be asked for again. */
export const inventoryHeaders = (inventory: { readonly id: string; readonly version: number }) => ({
  etag: inventoryTag(inventory),
  'cache-control': 'private, no-cache',
  vary: 'accept, authorization',
})

/** The tag of the quiz: by what it is made from, the catalogue and the words of a language. */
export const quizTag = (revision: number, language: string, fingerprint: string, own: OwnFigures | null) =>
  `"r${revision}${partOf(own)}.${language}.${fingerprint}.${REPRESENTATION.json}"`

/** The tag of a category of the caller's organisation, as it is seen over a catalogue revision. */
export const ownCategoryTag = (code: string, revision: number, own: OwnFigures) =>
  `"${code}.r${revision}${partOf(own)}.${REPRESENTATION.json}"`

/** The tag of such a category by itself, as it is edited: by the overlay revision that gave it its present state. */
export const overlayCategoryTag = (code: string, organisation: string, changedIn: number) =>
  `"${code}${partOf({ organisation, overlayRevision: changedIn })}.${REPRESENTATION.json}"`

/** The tag of all that an organisation has laid over the catalogue, or of one of its revisions. */
export const overlayTag = (organisation: string, overlayRevision: number) =>
  `"overlay${partOf({ organisation, overlayRevision })}.${REPRESENTATION.json}"`

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
} & (
  | {
      readonly catalogueRevision: number
      /** Where the answer depends on whose key was sent. */
      readonly overlayRevision?: number
    }
  | { readonly referenceRevision: number }
)

const overlayIn = (tagged: Tagged) => ('overlayRevision' in tagged ? tagged.overlayRevision : undefined)

export const tagHeaders = (tagged: Tagged) => ({
  etag: tagged.tag,
  // What holds an organisation's own figures is for its caller alone, and no cache between may keep it.
  'cache-control': overlayIn(tagged) ? 'private, no-cache' : 'no-cache',
  vary: [tagged.vary ?? 'accept', ...(overlayIn(tagged) === undefined ? [] : ['authorization'])].join(', '),
  ...('catalogueRevision' in tagged
    ? { 'catalogue-revision': tagged.catalogueRevision }
    : { 'reference-revision': tagged.referenceRevision }),
  ...(overlayIn(tagged) !== undefined && { 'overlay-revision': overlayIn(tagged) }),
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

/** Sends what is an organisation's alone with its tag, or 304 where the caller has it already. */
export const sendOwn = (
  request: FastifyRequest,
  reply: FastifyReply,
  tag: string,
  answer: unknown,
): FastifyReply =>
  sendUnlessKept(
    request,
    reply,
    { etag: tag, 'cache-control': 'private, no-cache', vary: 'accept, authorization' },
    answer,
  )

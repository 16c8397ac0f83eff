import { DomainError, FaultyInput } from '../core/fault.ts'
import { ACCESS_PROBLEMS } from './accessProblems.ts'
import { INVENTORY_PROBLEMS } from './inventoryProblems.ts'
import { OVERLAY_PROBLEMS } from './overlayProblems.ts'
import { type Problem, problem } from './problemRow.ts'
import { PROPOSAL_PROBLEMS } from './proposalProblems.ts'

const RETRY_SOON = { 'retry-after': '5' }

/** The one table from error code to status, title and what to do. Both edges and GET /problems/{code} use it. */
export const PROBLEMS = {
  ...ACCESS_PROBLEMS,
  ...INVENTORY_PROBLEMS,
  ...OVERLAY_PROBLEMS,
  ...PROPOSAL_PROBLEMS,
  'malformed-request': problem(
    400,
    'The request is not valid HTTP',
    'The bytes received are not an HTTP/1.1 request.',
  ),
  'malformed-url': problem(
    400,
    'The address is malformed',
    'Percent-encode the address as RFC 3986 says, in UTF-8.',
  ),
  'malformed-body': problem(
    400,
    'The body is not valid JSON',
    'Send one JSON document in UTF-8, as long as Content-Length says. Keys named __proto__, and objects that set constructor.prototype, are refused.',
  ),
  'faulty-query': problem(
    400,
    'The query has faults',
    'Every fault is in errors: pointer names the query parameter, message says what is allowed. Unknown parameters are refused, not dropped.',
  ),
  'faulty-cursor': problem(
    400,
    'The cursor does not fit',
    'A cursor goes with the filter and the catalogue revision of the page that it came from. Use the Link header or nextCursor as they are, or start again without a cursor.',
  ),
  'malformed-condition': problem(
    400,
    'If-Match cannot be read',
    'Send entity tags as the header ETag gave them, each in its double quotes.',
  ),
  'unknown-path': problem(
    404,
    'There is nothing at this address',
    'All addresses are listed in /openapi.json and at /docs.',
  ),
  'unknown-category': problem(
    404,
    'There is no such category',
    'nearest names the closest categories. GET /v1/categories?search=… finds categories by words.',
  ),
  'unknown-tariff': problem(
    404,
    'There is no such tariff',
    'known names the codes that there are. GET /v1/tariffs lists them.',
  ),
  'unknown-emission-factor': problem(
    404,
    'There is no such emission factor',
    'known names the codes that there are. GET /v1/emission-factors lists them.',
  ),
  'unknown-reference-revision': problem(
    404,
    'There is no such revision of tariffs and emission factors',
    'newest is the newest revision. Leave referenceRevision out to use it.',
  ),
  'unknown-revision': problem(
    404,
    'There is no such catalogue revision',
    'newest is the newest revision. Leave catalogueRevision out to use it.',
  ),
  'unknown-problem': problem(
    404,
    'There is no such problem',
    'GET /problems/{code} explains the codes that answers carry.',
  ),
  'method-not-allowed': problem(
    405,
    'This address does not have that method',
    'Allow names the methods that it has.',
  ),
  'not-acceptable': problem(
    406,
    'The answer cannot be given in an accepted form',
    'Accept must let application/json through. Errors always come as application/problem+json.',
  ),
  'request-timeout': problem(
    408,
    'The request took too long to arrive',
    'Send headers and body without long pauses.',
  ),
  'category-exists': problem(
    409,
    'There is such a category already',
    'A code is never used twice. PUT or PATCH changes the category that has it; a retired one can be restored.',
  ),
  'tariff-exists': problem(
    409,
    'There is such a tariff already',
    'A code is never used twice. PUT or PATCH changes the tariff that has it; a retired one can be restored.',
  ),
  'emission-factor-exists': problem(
    409,
    'There is such an emission factor already',
    'A code is never used twice. PUT or PATCH changes the factor that has it; a retired one can be restored.',
  ),
  'large-change': problem(
    409,
    'The change is very large',
    'A draw figure would change by more than a factor of three, or go. changes lists each before and after. Where they are meant, send the edit again with confirm=true (in GraphQL confirm: true).',
  ),
  'already-there': problem(
    412,
    'There is something at this address already',
    'If-None-Match: * asks that there be nothing. Read what is there, and change it with If-Match.',
  ),
  'stale-category': problem(
    412,
    'The category has been edited meanwhile',
    'lastEdit says by whom, when and why, changes in which fields, current how the category is now; etag is the tag to base the next attempt on.',
  ),
  'stale-tariff': problem(
    412,
    'The tariff has been edited meanwhile',
    'lastEdit says by whom, when and why, changes in which fields, current how the tariff is now; etag is the tag to base the next attempt on.',
  ),
  'stale-emission-factor': problem(
    412,
    'The emission factor has been edited meanwhile',
    'lastEdit says by whom, when and why, changes in which fields, current how the factor is now; etag is the tag to base the next attempt on.',
  ),
  'stale-revision': problem(
    412,
    'The catalogue has moved on',
    'Somebody else made a newer revision. edits lists what came since, and changes the categories that are concerned. Read them, and make the change on top of the newest.',
  ),
  'body-too-large': problem(
    413,
    'The body is too large',
    'Send fewer devices in one request; divide a file that is to be imported.',
  ),
  'address-too-long': problem(
    414,
    'A part of the address is too long',
    'No part of a path is longer than 500 characters.',
  ),
  'unsupported-media-type': problem(
    415,
    'The body is in a form that is not read here',
    'Send one of the media types that Accept-Post or Accept-Patch names; for most addresses application/json.',
    { 'accept-post': 'application/json' },
  ),
  'unknown-expectation': problem(
    417,
    'What the request expects is not offered here',
    'Of Expect, only 100-continue is understood. Leave the header out.',
  ),
  'faulty-input': problem(
    422,
    'The request has faults',
    'Every fault is in errors at once: pointer (RFC 6901) says where in the body, code what kind, message what is allowed. A fault with "in": "query" names a query parameter instead.',
  ),
  'plan-too-large': problem(
    422,
    'The plan has too many ways to spend its budget',
    'The best set is sought exactly, and with these prices there are too many sets to compare. Name fewer measures in plan.measures, give prices in whole units of the currency, or plan for fewer devices.',
  ),
  'faulty-import': problem(
    422,
    'The file has faults',
    'Nothing of it was stored. badRows says where (line and column of a CSV file, pointer into a JSON list), what kind, and what is allowed; the first 1,000 are listed.',
  ),
  'precondition-required': problem(
    428,
    'The edit does not say what it is based on',
    'Send the ETag of what you have read as If-Match, so that nobody else’s edit is overwritten unseen; to make a category, If-None-Match: *.',
  ),
  'headers-too-large': problem(
    431,
    'The header fields are too large',
    'Keep address and headers below 16 KiB together.',
  ),
  internal: problem(
    500,
    'The service failed',
    'The fault is on our side. Tell the operator the requestId of the answer; the log has the details under it.',
  ),
  stopping: problem(
    503,
    'The service is stopping',
    'Try again after the seconds that Retry-After names.',
    RETRY_SOON,
  ),
  'database-unavailable': problem(
    503,
    'The database cannot be reached',
    'Nothing is wrong with the request. Send it again after the seconds that Retry-After names; with an Idempotency-Key where it stores something, since it may have arrived. GET /health/ready says whether the database answers again.',
    RETRY_SOON,
  ),
  'not-ready': problem(
    503,
    'The service is not ready',
    'checks says what is missing. Try again after Retry-After.',
    RETRY_SOON,
  ),
} as const satisfies Record<string, Problem>

export type ProblemCode = keyof typeof PROBLEMS

export const isProblemCode = (code: string): code is ProblemCode => Object.hasOwn(PROBLEMS, code)

/** Where the code is explained; a relative URI, as RFC 9457 allows. */
export const typeOf = (code: ProblemCode) => `/problems/${code}`

/** A fault of the body as the contract names it; a fault of the query says so. */
export interface ShownFault {
  readonly in?: 'query'
  readonly pointer: string
  readonly code: string
  readonly message: string
}

export interface Translated {
  readonly status: number
  readonly type: string
  readonly title: string
  readonly code: ProblemCode
  readonly detail: string
  readonly errors?: readonly ShownFault[]
  /** Further facts for the caller, such as `nearest`. */
  readonly extra?: Readonly<Record<string, unknown>>
  readonly headers?: Readonly<Record<string, string>>
}

const row = (code: ProblemCode, detail: string): Translated => {
  const { status, title, headers }: Problem = PROBLEMS[code]
  return { status, type: typeOf(code), title, code, detail, ...(headers && { headers }) }
}

interface FrameworkFields {
  readonly code?: string
  readonly statusCode?: number
}

/** The framework's own errors. Their sentences are ours, so that nothing of the inside is told. */
const FRAMEWORK: Readonly<Record<string, readonly [ProblemCode, string]>> = {
  FST_ERR_CTP_INVALID_JSON_BODY: [
    'malformed-body',
    'The body is not valid JSON, or it sets a forbidden key.',
  ],
  FST_ERR_CTP_EMPTY_JSON_BODY: ['malformed-body', 'The body is empty; this request needs a JSON document.'],
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: ['malformed-body', 'The body is not as long as Content-Length says.'],
  FST_ERR_CTP_BODY_TOO_LARGE: ['body-too-large', 'The body is larger than this service reads.'],
  FST_ERR_CTP_INVALID_MEDIA_TYPE: ['unsupported-media-type', 'Bodies are read as application/json only.'],
  FST_ERR_BAD_URL: ['malformed-url', 'The address cannot be decoded.'],
  FST_STATIC_FORBIDDEN_PATH: ['unknown-path', 'There is nothing at this address.'],
  FST_ERR_MAX_PARAM_LENGTH: ['address-too-long', 'A part of the path is longer than 500 characters.'],
}
/** Errors of node's HTTP parser. */
const PARSER: Readonly<Record<string, readonly [ProblemCode, string]>> = {
  HPE_HEADER_OVERFLOW: ['headers-too-large', 'Address and header fields are larger than 16 KiB together.'],
  ERR_HTTP_REQUEST_TIMEOUT: ['request-timeout', 'The request did not arrive completely in time.'],
}

/** Whether somebody who runs the service has to act, and so has to find the error itself in the log. */
export const isOurs = (code: ProblemCode) => code === 'internal' || code === 'database-unavailable'

/** What node's HTTP parser refused before there was a request. */
export function translateParserError(code: string | undefined): Translated {
  return row(
    ...(PARSER[code ?? ''] ?? ['malformed-request', 'The bytes received are not a valid HTTP request.']),
  )
}

/** Any error as the table knows it. What the table does not know is 500, and says nothing of the inside. */
export function translate(error: unknown): Translated {
  if (error instanceof FaultyInput) return faulty(error.faults)
  if (error instanceof DomainError && isProblemCode(error.code))
    return withRetryAfter({ ...row(error.code, error.message), extra: error.details })
  const { code = '', statusCode = 500 } = error instanceof Error ? (error as Error & FrameworkFields) : {}
  const known = FRAMEWORK[code]
  if (known) return row(...known)
  // Such as a connection that breaks off in the middle of a body.
  if (statusCode >= 400 && statusCode < 500) return row('malformed-request', 'The request could not be read.')
  return row('internal', 'The service failed. Tell the operator the request id of this answer.')
}

/** Where an error says in how many seconds to come back, the header says so, too. */
function withRetryAfter(translated: Translated): Translated {
  const seconds = translated.extra?.['retryAfterSeconds']
  if (typeof seconds !== 'number') return translated
  return { ...translated, headers: { ...translated.headers, 'retry-after': String(seconds) } }
}

function faulty(errors: readonly ShownFault[]): Translated {
  const code = errors.every((fault) => fault.in === 'query') ? 'faulty-query' : 'faulty-input'
  const detail =
    errors.length === 1 ? errors[0]!.message : `There are ${errors.length} faults; errors names each of them.`
  return { ...row(code, detail), errors }
}

import type { FastifyReply, FastifyRequest } from 'fastify'
import { z } from 'zod'
import { DomainError } from '../../core/fault.ts'
import { isOurs, PROBLEMS, type ProblemCode, type Translated, translate, typeOf } from '../errors.ts'

declare module 'fastify' {
  interface FastifyContextConfig {
    /** The media types that a route reads bodies in; JSON alone where nothing is said. */
    readonly reads?: readonly string[]
  }
}

export const PROBLEM_TYPE = 'application/problem+json; charset=utf-8'

const faultSchema = z
  .strictObject({
    in: z
      .literal('query')
      .optional()
      .describe('Present where the fault is in a query parameter and not in the body'),
    pointer: z.string().describe('JSON Pointer (RFC 6901)'),
    code: z.string(),
    message: z.string(),
  })
  .meta({ id: 'Fault' })

/** RFC 9457 problem details. Members beyond these say more of one code, such as `nearest`. */
export const problemSchema = z
  .looseObject({
    type: z.string(),
    title: z.string(),
    status: z.int(),
    code: z.string(),
    detail: z.string(),
    requestId: z.string(),
    errors: z.array(faultSchema).optional(),
  })
  .meta({ id: 'Problem', description: 'Problem details (RFC 9457)' })

/** The body of a problem answer. What a translated error adds can't replace the members that RFC 9457 names. */
export function problemBody(translated: Translated, requestId: string) {
  const { status, type, title, code, detail, errors, extra } = translated
  return { ...extra, type, title, status, code, detail, requestId, ...(errors && { errors }) }
}

/** Answers an error, and logs what is our own fault with its stack; the answer tells nothing of the inside. */
export function sendProblem(request: FastifyRequest, reply: FastifyReply, error: unknown): FastifyReply {
  const translated = withMediaTypes(translate(error), request)
  if (isOurs(translated.code)) request.log.error({ err: error }, 'unexpected error')
  return reply
    .code(translated.status)
    .headers({ ...translated.headers, 'cache-control': 'no-store' })
    .type(PROBLEM_TYPE)
    .send(problemBody(translated, request.id))
}

/** Which media types the route reads, where that was what is wrong (RFC 9110, 15.5.16; RFC 5789, 3.1). */
function withMediaTypes(translated: Translated, { routeOptions, method }: FastifyRequest): Translated {
  const { reads } = routeOptions.config
  if (translated.code !== 'unsupported-media-type' || reads === undefined) return translated
  const header = method === 'PATCH' ? 'accept-patch' : 'accept-post'
  return {
    ...translated,
    detail: `Bodies are read here as ${reads.join(' or ')} only, in UTF-8.`,
    headers: { [header]: reads.join(', ') },
  }
}

export const unknownPath = () => new DomainError('unknown-path', 'There is nothing at this address.')

/** The refusals that every route may answer: of its framing, its key, its Accept header, or while the service stops. */
const ALWAYS = [
  'malformed-request',
  'malformed-url',
  'key-in-query',
  'key-unknown',
  'publishable-key',
  'too-many-bad-keys',
  'faulty-query',
  'not-acceptable',
  'internal',
  'stopping',
  'database-unavailable',
] as const
/** What a route that needs a key with a scope may answer besides. */
export const NEEDS_KEY = ['key-required', 'scope-missing'] as const
/** The shared catalogue is everybody's, so only the organisation that runs the service edits it. */
export const NEEDS_OPERATOR_KEY = [...NEEDS_KEY, 'operator-only'] as const
export const NEEDS_BODY = [
  'malformed-body',
  'body-too-large',
  'unsupported-media-type',
  'faulty-input',
] as const

/** The error answers of a route for its OpenAPI entry: one response for each status, an example for each code. */
export const problemAnswers = (...codes: readonly ProblemCode[]) =>
  unlimitedProblemAnswers('quota-exceeded', ...codes)

/** The same for a route that may be asked however often. */
export function unlimitedProblemAnswers(...codes: readonly ProblemCode[]) {
  const all = [...new Set([...ALWAYS, ...codes])]
  const statuses = [...new Set(all.map((code) => PROBLEMS[code].status))]
  return Object.fromEntries(
    statuses.map((status) => [status, problemAnswer(all.filter((code) => PROBLEMS[code].status === status))]),
  )
}

const problemAnswer = (codes: readonly ProblemCode[]) => ({
  description: codes.map((code) => PROBLEMS[code].title).join('; or: '),
  content: {
    'application/problem+json': {
      schema: problemSchema,
      examples: Object.fromEntries(codes.map((code) => [code, { value: exampleOf(code) }])),
    },
  },
})

function exampleOf(code: ProblemCode) {
  const { status, title, explanation } = PROBLEMS[code]
  const example = { type: typeOf(code), title, status, code, detail: explanation, requestId: 'b7c1d2e0-1f' }
  if (code === 'faulty-input')
    return {
      ...example,
      errors: [
        {
          pointer: '/devices/3/modes/0/hoursPerWeek',
          code: 'too-big',
          message: 'must be at most 168, but it is 200.',
        },
      ],
    }
  if (code === 'faulty-query')
    return {
      ...example,
      errors: [
        { in: 'query', pointer: '/limit', code: 'too-big', message: 'must be at most 200, but it is 1000.' },
      ],
    }
  return example
}

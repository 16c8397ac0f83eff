import type { FastifyReply, FastifyRequest } from 'fastify'
import { translate } from '../errors.ts'
import { answerTranslated } from './answerError.ts'
import { INTERNAL_ERROR } from './formatError.ts'

const GRAPHQL_JSON = 'application/graphql-response+json'

/**
 * What goes wrong before a GraphQL request was read - malformed JSON, a body that is too large, a missing key - in
 * the shape of a GraphQL answer, since that is what a GraphQL client can read.
 */
export function answerHttpError(error: unknown, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  const translated = translate(error)
  const answer = answerTranslated(translated)
  if (answer === null) request.log.error({ err: error }, 'A GraphQL request failed')
  const { message, extensions } = answer ?? {
    ...INTERNAL_ERROR,
    extensions: { ...INTERNAL_ERROR.extensions, requestId: request.id },
  }
  const type = request.headers.accept?.includes(GRAPHQL_JSON) ? GRAPHQL_JSON : 'application/json'
  return reply
    .code(translated.status)
    .headers({ ...translated.headers, 'cache-control': 'no-store' })
    .type(`${type}; charset=utf-8`)
    .send(JSON.stringify({ errors: [{ message, extensions }] }))
}

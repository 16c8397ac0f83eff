import { unwrapResolverError } from '@apollo/server/errors'
import { GraphQLError, type GraphQLErrorExtensions } from 'graphql'
import { DomainError, FaultyInput } from '../../core/fault.ts'
import { translate, type Translated } from '../errors.ts'

interface Answered {
  readonly message: string
  readonly extensions: GraphQLErrorExtensions
}

/** The GraphQL code for each status of the one table in edges/errors.ts; what is not here is ours to answer for. */
const CODES: Readonly<Record<number, string>> = {
  400: 'BAD_REQUEST',
  401: 'UNAUTHENTICATED',
  403: 'FORBIDDEN',
  404: 'NOT_FOUND',
  408: 'BAD_REQUEST',
  409: 'CONFLICT',
  412: 'CONFLICT',
  413: 'BAD_REQUEST',
  415: 'BAD_REQUEST',
  422: 'BAD_USER_INPUT',
  429: 'RATE_LIMITED',
  503: 'UNAVAILABLE',
}

/** Codes that graphql and the server give to faults of a document or its variables; nothing of the inside is in them. */
const FAULTS_OF_THE_DOCUMENT = new Set([
  'BAD_REQUEST',
  'BAD_USER_INPUT',
  'GRAPHQL_PARSE_FAILED',
  'GRAPHQL_VALIDATION_FAILED',
  'OPERATION_RESOLUTION_FAILURE',
  'PERSISTED_QUERY_NOT_SUPPORTED',
])

/** What a caller is told of an error that is theirs to correct, or null for any other. */
export function answerError(error: unknown): Answered | null {
  const cause = unwrapResolverError(error)
  if (cause instanceof FaultyInput || cause instanceof DomainError) return answerTranslated(translate(cause))
  if (!(cause instanceof GraphQLError) || !FAULTS_OF_THE_DOCUMENT.has(String(cause.extensions['code'])))
    return null
  const { code, reason } = cause.extensions
  return { message: cause.message, extensions: { code, ...(reason !== undefined && { reason }) } }
}

/** A row of the table as GraphQL says it; `reason` is the table's own code, explained at /problems/{reason}. */
export function answerTranslated({
  status,
  code: reason,
  detail,
  errors,
  extra,
}: Translated): Answered | null {
  const code = errors ? 'BAD_USER_INPUT' : CODES[status]
  if (code === undefined) return null
  return { message: detail, extensions: { ...extra, code, reason, ...(errors && { errors }) } }
}

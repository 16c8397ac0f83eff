import type { GraphQLFormattedError } from 'graphql'
import { answerError } from './answerError.ts'

export const INTERNAL_ERROR = {
  message: 'Internal error',
  extensions: { code: 'INTERNAL_SERVER_ERROR' },
} as const

/**
 * Every error of an answer passes here. Apollo Server itself tells callers the message of whatever a resolver
 * threw, so what is not on the list of errors that are the caller's to correct comes out as "Internal error".
 */
export function formatError(
  { locations, path }: GraphQLFormattedError,
  error: unknown,
): GraphQLFormattedError {
  const { message, extensions } = answerError(error) ?? INTERNAL_ERROR
  return { message, ...(locations && { locations }), ...(path && { path }), extensions }
}

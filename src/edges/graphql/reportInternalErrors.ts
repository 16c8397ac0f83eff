import type { ApolloServerPlugin } from '@apollo/server'
import { unwrapResolverError } from '@apollo/server/errors'
import { DomainError } from '../../core/fault.ts'
import { isOurs, translate } from '../errors.ts'
import { answerError } from './answerError.ts'
import type { GraphqlContext } from './context.ts'
import { INTERNAL_ERROR } from './formatError.ts'

/** What an operator has to find in the log, whatever callers are told of it. */
const isForTheLog = (error: unknown) => {
  const cause = unwrapResolverError(error)
  return answerError(error) === null || (cause instanceof DomainError && isOurs(translate(cause).code))
}

/** Logs once what a caller is only told as "Internal error", and outages of the database, and gives both the request id that joins them. */
export const reportInternalErrors: ApolloServerPlugin<GraphqlContext> = {
  requestDidStart: async () => ({
    didEncounterErrors: async ({ errors, contextValue }) => {
      for (const error of errors)
        if (isForTheLog(error))
          contextValue.log.error({ err: unwrapResolverError(error) }, 'A GraphQL operation failed')
    },
    willSendResponse: async ({ response: { body }, contextValue: { requestId } }) => {
      if (body.kind !== 'single') return
      const { errors } = body.singleResult
      if (!errors) return
      body.singleResult.errors = errors.map((error) =>
        error.extensions?.['code'] === INTERNAL_ERROR.extensions.code
          ? { ...error, extensions: { ...error.extensions, requestId } }
          : error,
      )
    },
  }),
}

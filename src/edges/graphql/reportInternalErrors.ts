import type { ApolloServerPlugin } from '@apollo/server'
import { unwrapResolverError } from '@apollo/server/errors'
import { answerError } from './answerError.ts'
import type { GraphqlContext } from './context.ts'
import { INTERNAL_ERROR } from './formatError.ts'

/** Logs once what a caller is only told as "Internal error", and gives both the request id that joins them. */
export const reportInternalErrors: ApolloServerPlugin<GraphqlContext> = {
  requestDidStart: async () => ({
    didEncounterErrors: async ({ errors, contextValue }) => {
      for (const error of errors)
        if (answerError(error) === null)
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

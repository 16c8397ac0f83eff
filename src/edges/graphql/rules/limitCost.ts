import type { ApolloServerPlugin } from '@apollo/server'
import { ApolloServerErrorCode } from '@apollo/server/errors'
import { complexityFromQuery } from '@pothos/plugin-complexity'
import {
  type DocumentNode,
  getVariableValues,
  GraphQLError,
  Kind,
  type OperationDefinitionNode,
} from 'graphql'
import type { GraphqlContext } from '../context.ts'

/**
 * Refuses an operation that costs more than `max` before anything of it is resolved. It is a plugin and not a
 * validation rule since the cost depends on the variables, and it does not use Pothos' own limit since that
 * answers 200 and field by field.
 */
export function limitCost(max: number): ApolloServerPlugin<GraphqlContext> {
  return {
    requestDidStart: async () => ({
      didResolveOperation: async ({ document, operation, schema, request, contextValue }) => {
        const given = request.variables ?? {}
        // An unknown operation, and variables that do not fit, are refused each by name at execution.
        if (!operation || getVariableValues(schema, operation.variableDefinitions ?? [], given).errors) return
        if (!schema.getRootType(operation.operation))
          throw refusal(`This service has no ${operation.operation}s.`, 'no-such-operation')
        const options = { schema, variables: given, ctx: contextValue }
        const cost = costOf(only(operation, document), options)
        if (cost > max)
          throw refusal(`The operation costs ${Math.ceil(cost)}; at most ${max} are allowed.`, 'too-costly')
      },
    }),
  }
}

/** The document without its other operations: Pothos takes the first, whichever was asked for. */
const only = (operation: OperationDefinitionNode, document: DocumentNode): DocumentNode => ({
  ...document,
  definitions: [operation, ...document.definitions.filter(({ kind }) => kind === Kind.FRAGMENT_DEFINITION)],
})

/** Arguments that fit their variables' types but not their own are found here first: a null for a required one. */
function costOf(document: DocumentNode, options: Parameters<typeof complexityFromQuery>[1]): number {
  try {
    return complexityFromQuery(document, options).complexity
  } catch (error) {
    throw error instanceof GraphQLError ? refusal(error.message, 'faulty-argument', error) : error
  }
}

const refusal = (message: string, reason: string, cause?: GraphQLError) =>
  new GraphQLError(message, {
    nodes: cause?.nodes,
    extensions: { code: ApolloServerErrorCode.GRAPHQL_VALIDATION_FAILED, reason, http: { status: 400 } },
  })

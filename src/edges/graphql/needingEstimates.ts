import type { GraphQLSchema } from 'graphql'
import { authorize } from '../../useCases/authorize.ts'
import type { GraphqlContext } from './context.ts'

/**
 * Holds every question that is worked out from what the caller sends to the operator's rule on estimates, as the routes of
 * REST do that are asked with a body: they are the fields of Query that take an `input`. What is only read has rules of
 * its own.
 * @throws DomainError key-required, scope-missing when such a field is asked
 */
export function needingEstimates(schema: GraphQLSchema): GraphQLSchema {
  for (const field of Object.values(schema.getQueryType()?.getFields() ?? {})) {
    const { resolve } = field
    if (!resolve || !field.args.some(({ name }) => name === 'input')) continue
    field.resolve = (source, given, context: GraphqlContext, info): unknown => {
      if (!context.anonymousEstimates) authorize(context.sender, 'estimate')
      return resolve(source, given, context, info)
    }
  }
  return schema
}

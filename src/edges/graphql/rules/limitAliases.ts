import { GraphQLError, type ValidationRule } from 'graphql'

/** Refuses a document with more than `max` aliases, those of __typename included; told once. */
export function limitAliases(max: number): ValidationRule {
  return (context) => {
    let count = 0
    return {
      Field(field) {
        if (!field.alias || ++count !== max + 1) return
        const message = `The document renames more than ${max} fields with aliases.`
        context.reportError(
          new GraphQLError(message, { nodes: field, extensions: { reason: 'too-many-aliases' } }),
        )
      },
    }
  }
}

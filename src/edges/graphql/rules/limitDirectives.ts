import { GraphQLError, type ValidationRule } from 'graphql'

/** Refuses a document with more than `max` directives; told once. */
export function limitDirectives(max: number): ValidationRule {
  return (context) => {
    let count = 0
    return {
      Directive(directive) {
        if (++count !== max + 1) return
        const message = `The document has more than ${max} directives.`
        context.reportError(
          new GraphQLError(message, { nodes: directive, extensions: { reason: 'too-many-directives' } }),
        )
      },
    }
  }
}

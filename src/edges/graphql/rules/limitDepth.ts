import {
  type FragmentDefinitionNode,
  GraphQLError,
  Kind,
  type SelectionNode,
  type ValidationRule,
} from 'graphql'

/**
 * Refuses an operation whose fields are nested deeper than `max` levels, counted through fragments. What is below
 * __schema and __type is left to graphql's own MaxIntrospectionDepthRule, which lets the usual introspection query by.
 */
export function limitDepth(max: number): ValidationRule {
  return (context) => {
    const depths = new Map<string, number>()
    const deepest = (selections: readonly SelectionNode[]) => Math.max(0, ...selections.map(depthOf))

    function depthOf(selection: SelectionNode): number {
      if (selection.kind === Kind.INLINE_FRAGMENT) return deepest(selection.selectionSet.selections)
      if (selection.kind === Kind.FRAGMENT_SPREAD)
        return depthOfFragment(context.getFragment(selection.name.value))
      if (selection.name.value.startsWith('__')) return 1
      return 1 + deepest(selection.selectionSet?.selections ?? [])
    }

    /** Each fragment is measured once, however often it is spread; a circular one is refused by another rule. */
    function depthOfFragment(fragment: FragmentDefinitionNode | null | undefined): number {
      if (!fragment) return 0
      const known = depths.get(fragment.name.value)
      if (known !== undefined) return known
      depths.set(fragment.name.value, 0)
      const depth = deepest(fragment.selectionSet.selections)
      depths.set(fragment.name.value, depth)
      return depth
    }

    return {
      OperationDefinition(operation) {
        const depth = deepest(operation.selectionSet.selections)
        if (depth <= max) return
        const message = `The operation nests fields ${depth} levels deep; at most ${max} are allowed.`
        context.reportError(
          new GraphQLError(message, { nodes: operation, extensions: { reason: 'too-deep' } }),
        )
      },
    }
  }
}

import SchemaBuilder from '@pothos/core'
import ComplexityPlugin from '@pothos/plugin-complexity'
import RelayPlugin from '@pothos/plugin-relay'
import type { GraphqlContext } from './context.ts'
import { GRAPHQL_LIMITS, LIST_COST } from './limits.ts'

/**
 * Where the types of the schema are registered. Fields are non-null unless a type says otherwise: a missing
 * figure is a fault, not an answer. Root fields of Query are nullable, so that one that fails leaves the others.
 */
export const builder = new SchemaBuilder<{
  Context: GraphqlContext
  DefaultFieldNullability: false
  DefaultEdgesNullability: false
  DefaultNodeNullability: false
}>({
  plugins: [ComplexityPlugin, RelayPlugin],
  defaultFieldNullability: false,
  complexity: { defaultListMultiplier: LIST_COST },
  relay: {
    clientMutationId: 'omit',
    cursorType: 'String',
    nodeTypeOptions: { description: 'An object that can be read again by its id.' },
    idFieldOptions: { description: 'Opaque name of the object, unique in the whole service.' },
    // queries/node.ts: Pothos' own root fields answer a garbled id with a fault of the server.
    nodeQueryOptions: false,
    nodesQueryOptions: false,
    pageInfoTypeOptions: { description: 'Where a page lies in the whole list.' },
    pageInfoFieldOptions: { description: 'Where this page lies in the whole list.' },
    hasNextPageFieldOptions: {
      description: 'True where the list goes on after this page; exact in both directions.',
    },
    hasPreviousPageFieldOptions: {
      description: 'True where the list has something before this page; exact in both directions.',
    },
    startCursorFieldOptions: { description: 'Cursor of the first edge; null on an empty page.' },
    endCursorFieldOptions: { description: 'Cursor of the last edge; null on an empty page.' },
    cursorFieldOptions: { description: 'Opaque place of this edge in the list, for `after` and `before`.' },
    // The page's size is counted at the connection; counting the list again would square it.
    edgesFieldOptions: {
      nullable: false,
      description: 'The page, in order.',
      complexity: { field: 1, multiplier: 1 },
    },
    nodeFieldOptions: { nullable: false, description: 'What the edge leads to.' },
    firstArgOptions: {
      description: `Length of a page counted from its beginning, 0 to ${GRAPHQL_LIMITS.pageSize}; ${GRAPHQL_LIMITS.defaultPageSize} where neither \`first\` nor \`last\` is given.`,
    },
    lastArgOptions: {
      description: `Length of a page counted from its end, 0 to ${GRAPHQL_LIMITS.pageSize}. Not together with \`first\`.`,
    },
    afterArgOptions: { description: 'Only what comes after this cursor.' },
    beforeArgOptions: { description: 'Only what comes before this cursor.' },
  },
})

builder.queryType({ description: 'Everything that can be asked. Nothing here changes anything.' })

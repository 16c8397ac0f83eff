import { resolveNodes } from '@pothos/plugin-relay'
import { FaultyInput } from '../../../core/fault.ts'
import { builder } from '../builder.ts'
import { GRAPHQL_LIMITS } from '../limits.ts'
import { nodeNamed } from '../nodeNamed.ts'

const NodeType = builder.nodeInterfaceRef()

builder.queryField('node', (t) =>
  t.field({
    type: NodeType,
    nullable: true,
    description: 'The object that an id names, or null where it names none.',
    args: { id: t.arg.id({ required: true, description: 'Id as an object gave it out.' }) },
    resolve: async (_root, { id }, context, info) =>
      (await resolveNodes(builder, context, info, [nodeNamed(id, info.schema)]))[0],
  }),
)

builder.queryField('nodes', (t) =>
  t.field({
    type: [NodeType],
    nullable: { list: true, items: true },
    description: `The objects that ids name, in the order of the ids, and null for each id that names none. At most ${GRAPHQL_LIMITS.nodeIds} ids.`,
    args: { ids: t.arg.idList({ required: true, description: 'Ids as objects gave them out.' }) },
    complexity: ({ ids }) => ({ field: 1, multiplier: ids.length }),
    resolve: (_root, { ids }, context, info) => {
      if (ids.length > GRAPHQL_LIMITS.nodeIds) throw tooMany(ids.length)
      const names = ids.map((id) => nodeNamed(id, info.schema))
      return resolveNodes(builder, context, info, names)
    },
  }),
)

const tooMany = (count: number) =>
  new FaultyInput([
    {
      pointer: '/ids',
      code: 'too-big',
      message: `At most ${GRAPHQL_LIMITS.nodeIds} ids can be asked for at once, but there are ${count}.`,
    },
  ])

import { type GraphQLSchema, isObjectType } from 'graphql'

/** A type and the name of one object within it: what a global id holds. */
export interface NodeName {
  readonly typename: string
  readonly id: string
}

/**
 * The object that a global id names, or null where it is none that `node` reads. A garbled id is answered like
 * that of an object that is gone, as the specification of object identification has it, so that the other ids of
 * a `nodes` query still get their answers.
 */
export function nodeNamed(globalId: string, schema: GraphQLSchema): NodeName | null {
  const text = Buffer.from(globalId, 'base64').toString('utf8')
  const colon = text.indexOf(':')
  const type = schema.getType(text.slice(0, Math.max(colon, 0)))
  if (!isObjectType(type) || !type.getInterfaces().some(({ name }) => name === 'Node')) return null
  return { typename: type.name, id: text.slice(colon + 1) }
}

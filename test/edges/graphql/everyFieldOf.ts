import { getNamedType, type GraphQLNamedType, isInterfaceType, isObjectType } from 'graphql'
import { schema } from '../../../src/edges/graphql/schema.ts'

/** A selection of every field of a type, and of every field of all that lies below it. */
function selectAll(type: GraphQLNamedType): string {
  if (!isObjectType(type) && !isInterfaceType(type)) return ''
  const fields = Object.values(type.getFields()).map(
    (field) => `${field.name}${selectAll(getNamedType(field.type))}`,
  )
  const members = isInterfaceType(type) ? schema.getPossibleTypes(type) : []
  return ` { __typename ${[...fields, ...members.map((member) => `... on ${member.name}${selectAll(member)}`)].join(' ')} }`
}

/** Every field of one of the schema's types, by its name. */
export const everyFieldOf = (name: string) => selectAll(schema.getType(name)!)

import {
  getNullableType,
  type GraphQLInterfaceType,
  type GraphQLOutputType,
  isEnumType,
  isInterfaceType,
  isListType,
  isObjectType,
} from 'graphql'
import { schema } from '../../../src/edges/graphql/schema.ts'

/** Names that GraphQL cannot spell as they are. */
const OWN_NAMES: Readonly<Record<string, string>> = { partlyMeasured: 'partly-measured' }

/**
 * What GraphQL must answer, every field selected, where the use case gave this value: the same figures under the
 * same names, enums in capitals, null for what is absent.
 */
export function answerOf(value: unknown, typeName: string): unknown {
  return expected(value, schema.getType(typeName) as GraphQLOutputType)
}

function expected(value: unknown, given: GraphQLOutputType): unknown {
  const type = getNullableType(given)
  if (value === null || value === undefined) return null
  if (isListType(type)) return (value as unknown[]).map((item) => expected(item, type.ofType))
  if (isEnumType(type)) return (value as string).toUpperCase().replaceAll('-', '_')
  if (isInterfaceType(type)) return expected(value, memberOf(value, type))
  if (!isObjectType(type)) return value
  const fields = Object.values(type.getFields()).map((field) => [
    field.name,
    expected((value as Record<string, unknown>)[OWN_NAMES[field.name] ?? field.name], field.type),
  ])
  return { __typename: type.name, ...Object.fromEntries(fields) }
}

/** The type that the schema itself chooses for a value. */
function memberOf(value: unknown, type: GraphQLInterfaceType): GraphQLOutputType {
  const choose = type.resolveType as (value: unknown) => string
  return schema.getType(choose(value)) as GraphQLOutputType
}

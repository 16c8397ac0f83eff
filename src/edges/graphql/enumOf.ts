import { builder } from './builder.ts'

/** `networked-standby` as GraphQL spells it: NETWORKED_STANDBY. */
const inCapitals = (value: string) => value.toUpperCase().replaceAll('-', '_')

/** An enum whose members stand for the service's own kebab-case values; every member has a description. */
export function enumOf<T extends string>(
  name: string,
  description: string,
  members: Readonly<Record<T, string>>,
) {
  const values: Record<string, { readonly value: T; readonly description: string }> = {}
  for (const value in members) values[inCapitals(value)] = { value, description: members[value] }
  return builder.enumType(name, { description, values })
}

import { builder } from './builder.ts'

/** `networked-standby` as GraphQL spells it: NETWORKED_STANDBY; and `catalogue:edit` CATALOGUE_EDIT. */
const inCapitals = (value: string) => value.toUpperCase().replaceAll(/[-:]/g, '_')

/** An enum whose members stand for the service's own values; every member has a description. */
export function enumOf<T extends string>(
  name: string,
  description: string,
  members: Readonly<Record<T, string>>,
) {
  const values: Record<string, { readonly value: T; readonly description: string }> = {}
  for (const value in members) values[inCapitals(value)] = { value, description: members[value] }
  return builder.enumType(name, { description, values })
}

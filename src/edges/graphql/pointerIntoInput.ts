import { ONE_OF } from './oneOf.ts'

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null

/**
 * A JSON Pointer into REST's body as one into the EstimateInput that it was made from: it goes through the
 * member that a @oneOf input has. `/devices/0/modes/0/reading/amperes` becomes
 * `/devices/0/modes/0/reading/current/amperes`, and `/tariff/pricePerKwh` becomes `/tariff/flat/pricePerKwh`.
 */
export function pointerIntoInput(pointer: string, input: unknown): string {
  let value = input
  let path = ''
  let field = ''
  for (const step of pointer.split('/').slice(1)) {
    path += `/${step}`
    // An element of a list has the type that the list's field names.
    if (!Array.isArray(value)) field = step
    value = isObject(value) ? value[step] : undefined
    const member =
      Object.hasOwn(ONE_OF, field) && isObject(value) && !Array.isArray(value)
        ? Object.keys(value).find((key) => isSet(value, key))
        : undefined
    if (member === undefined) continue
    path += `/${member}`
    value = isObject(value) ? value[member] : undefined
  }
  return path
}

const isSet = (value: unknown, key: string) =>
  isObject(value) && value[key] !== null && value[key] !== undefined

import { ONE_OF } from './oneOf.ts'

/**
 * An EstimateInput in the shape of REST's body, so that both edges go through the same schema: a null is left
 * out, and the one member of a @oneOf input takes its place. Nothing is checked here.
 */
export function householdOfInput(input: unknown, field = ''): unknown {
  if (Array.isArray(input)) return input.map((item) => householdOfInput(item, field))
  if (typeof input !== 'object' || input === null) return input
  const given = Object.entries(input).filter(([, value]) => value !== null && value !== undefined)
  const fields = given.map(([name, value]) => [name, householdOfInput(value, name)] as const)
  const alternative = ONE_OF[field]
  const [only] = fields
  return alternative && only ? alternative(...only) : Object.fromEntries(fields)
}

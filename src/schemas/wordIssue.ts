import type { z } from 'zod'

type Issue = z.core.$ZodIssue

/** What a field must be, in plain words, for one zod issue; without the value that it is. */
export function wordIssue(issue: Issue): string {
  if (issue.code === 'invalid_type') return `must be ${TYPES[issue.expected] ?? issue.expected}`
  if (issue.code === 'invalid_value')
    return `must be ${issue.values.length > 1 ? 'one of: ' : ''}${issue.values.map(String).join(', ')}`
  if (issue.code === 'invalid_union') return `must be ${allowedForms(issue)}`
  if (issue.code === 'too_small') return atLeast(issue.origin, Number(issue.minimum), issue.inclusive ?? true)
  if (issue.code === 'too_big') return atMost(issue.origin, Number(issue.maximum), issue.inclusive ?? true)
  return issue.message
}

const TYPES: Readonly<Record<string, string>> = {
  int: 'a whole number',
  number: 'a number',
  string: 'text',
  boolean: 'true or false',
  object: 'an object',
  array: 'a list',
}

const UNITS: Readonly<Record<string, string>> = { string: ' characters', array: ' entries' }

function atLeast(origin: string, minimum: number, inclusive: boolean): string {
  if (UNITS[origin])
    return minimum === 1 ? 'must not be empty' : `must have at least ${minimum}${UNITS[origin]}`
  return inclusive ? `must be at least ${minimum}` : `must be above ${minimum}`
}

function atMost(origin: string, maximum: number, inclusive: boolean): string {
  if (UNITS[origin]) return `must have at most ${maximum}${UNITS[origin]}`
  return inclusive ? `must be at most ${maximum}` : `must be below ${maximum}`
}

/** The names of a discriminated union's members, or the types of a plain one's. */
function allowedForms(issue: Issue & { readonly code: 'invalid_union' }): string {
  if ('options' in issue && Array.isArray(issue.options))
    return `one of: ${issue.options.map(String).join(', ')}`
  const types = issue.errors.flatMap(([first]) => (first?.code === 'invalid_type' ? [first.expected] : []))
  return [...new Set(types)].map((type) => TYPES[type] ?? type).join(' or ')
}

import type { z } from 'zod'
import type { Fault, Submitted } from '../core/fault.ts'
import { wordIssue } from './wordIssue.ts'

const escape = (key: PropertyKey) => String(key).replaceAll('~', '~0').replaceAll('/', '~1')

/** JSON Pointer (RFC 6901) of a path into a document. */
export const pointerOf = (path: readonly PropertyKey[]) => path.map((key) => `/${escape(key)}`).join('')

/** Checks a value against a schema and names every fault by pointer, code and message; see Submitted. */
export function readShape<T>(schema: z.ZodType<T>, raw: unknown): Submitted<T> {
  const result = schema.safeParse(raw)
  if (result.success) return { raw, value: result.data, faults: [] }
  return { raw, value: null, faults: result.error.issues.flatMap((issue) => faultsOf(issue, raw)) }
}

type Issue = z.core.$ZodIssue

/** One zod issue as faults: an unknown field is a fault of its own, a failed union is the faults of its closest member. */
export function faultsOf(issue: Issue, raw: unknown, base: readonly PropertyKey[] = []): Fault[] {
  const path = [...base, ...issue.path]
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map((key) => ({
      pointer: pointerOf([...path, key]),
      code: 'unknown-field',
      message: `There is no field "${key.slice(0, 100)}" here; remove it or correct its name.`,
    }))
  if (issue.code === 'invalid_union' && issue.errors.some((inner) => depthOf(inner) > 0)) {
    const closest = [...issue.errors].sort((a, b) => depthOf(b) - depthOf(a) || a.length - b.length)[0]!
    return closest.flatMap((inner) => faultsOf(inner, raw, path))
  }
  const value = valueAt(raw, path)
  const missing = value === undefined && (issue.code === 'invalid_type' || issue.code === 'invalid_union')
  return [
    {
      pointer: pointerOf(path),
      code: missing ? 'required' : codeOf(issue),
      message: missing ? 'This field is required.' : messageOf(issue, value),
    },
  ]
}

/** How far into the value a union's member agreed with it before it failed. */
const depthOf = (issues: readonly Issue[]) => Math.max(...issues.map((issue) => issue.path.length))

function codeOf(issue: Issue): string {
  if (issue.code === 'custom') return String(issue.params?.['code'] ?? 'invalid')
  return issue.code.replaceAll('_', '-')
}

/** A message written by hand (a custom rule) stands as it is; the others get the bad value behind what is allowed. */
function messageOf(issue: Issue, value: unknown): string {
  const words = wordIssue(issue)
  return issue.code === 'custom' ? `${words}.` : `${words}${quoted(value)}`
}

/** The bad value, shortened, so that the caller can find it; objects and lists are not repeated. */
function quoted(value: unknown): string {
  if (value === undefined || (typeof value === 'object' && value !== null)) return '.'
  const text = JSON.stringify(value)
  return `, but it is ${text.length > 80 ? `${text.slice(0, 80)}…` : text}.`
}

function valueAt(raw: unknown, path: readonly PropertyKey[]): unknown {
  let value = raw
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined
    value = (value as Record<PropertyKey, unknown>)[key]
  }
  return value
}

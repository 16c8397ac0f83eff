import { z } from 'zod'
import { GRAPHQL_LIMITS } from './limits.ts'

const length = z.int().min(0).max(GRAPHQL_LIMITS.pageSize).optional()
const cursor = z.string().max(500).optional()

/** The arguments of every connection. Both lengths at once have no sensible meaning, so they are refused. */
export const pageArgumentsSchema = z
  .strictObject({ first: length, last: length, after: cursor, before: cursor })
  .refine(({ first, last }) => first === undefined || last === undefined, {
    path: ['last'],
    message: 'first and last cannot be given together; leave one of them out',
    params: { code: 'first-and-last' },
  })

/** The lengths in force, once the arguments are checked. */
export function pageLength({ first, last }: { first?: number | undefined; last?: number | undefined }) {
  return first === undefined && last === undefined
    ? { first: GRAPHQL_LIMITS.defaultPageSize }
    : { first, last }
}

/**
 * Cost of a connection by the length of its page. Pothos would count every page as ten (its list multiplier)
 * whatever `first` and `last` say.
 */
export function pageCost({
  first,
  last,
}: {
  first?: number | null | undefined
  last?: number | null | undefined
}) {
  return { field: 1, multiplier: Math.max(first ?? last ?? GRAPHQL_LIMITS.defaultPageSize, 1) }
}

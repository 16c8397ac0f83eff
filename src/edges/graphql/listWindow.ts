import type { z } from 'zod'
import { DomainError, FaultyInput, type Fault, type Submitted } from '../../core/fault.ts'
import type { Part } from '../../useCases/part.ts'
import { type ListFilter, readListCursor, type StoredList, writeListCursor } from '../listCursor.ts'
import { type pageArgumentsSchema, pageLength } from './pageArguments.ts'

type PageArguments = z.output<typeof pageArgumentsSchema>

/**
 * What the arguments of a connection ask of such a list.
 * @throws FaultyInput naming every fault of the page's arguments and of the filter
 */
export function listWindow<T, Place, F extends ListFilter>(
  list: StoredList<T, Place>,
  page: Submitted<PageArguments>,
  filter: Submitted<F>,
) {
  const faults: Fault[] = [...page.faults, ...filter.faults]
  const placeOf = (name: 'after' | 'before') => {
    const text = page.value?.[name]
    if (text === undefined || filter.value === null) return undefined
    try {
      return readListCursor(text, list, filter.value)
    } catch (error) {
      if (!(error instanceof DomainError)) throw error
      faults.push({ pointer: `/${name}`, code: error.code, message: error.message })
      return undefined
    }
  }
  const [after, before] = [placeOf('after'), placeOf('before')]
  if (page.value === null || filter.value === null || faults.length > 0) throw new FaultyInput(faults)
  const { first, last } = pageLength(page.value)
  const [limit, keep] = last === undefined ? [first ?? 0, 'first' as const] : [last, 'last' as const]
  return { filter: filter.value, window: { after, before, limit, keep } }
}

/** A part of such a list as a Relay connection. */
export function connectionOf<T, Place>(
  list: StoredList<T, Place>,
  { items, hasBefore, hasAfter }: Part<T>,
  filter: ListFilter,
) {
  const edges = items.map((node) => ({ node, cursor: writeListCursor(node, list, filter) }))
  return {
    edges,
    pageInfo: {
      hasNextPage: hasAfter,
      hasPreviousPage: hasBefore,
      startCursor: edges[0]?.cursor ?? null,
      endCursor: edges.at(-1)?.cursor ?? null,
    },
  }
}

import { DomainError } from '../core/fault.ts'
import { isOutage } from './isOutage.ts'

type Method = (...given: unknown[]) => unknown

/**
 * The same store, whose methods say `database-unavailable` where the database cannot be had; the database's own error is its
 * cause. The one place that tells outages from other failures, for every store. What a method gives piece by piece may fail
 * at any piece.
 */
export function tellOutages<T extends object>(store: T): T {
  const told = Object.entries(store).map(([name, method]: [string, Method]) => [name, telling(method)])
  return Object.fromEntries(told) as T
}

const telling =
  (method: Method): Method =>
  (...given) => {
    const result = method(...given)
    return isPieces(result) ? tellingPieces(result) : tellingPromise(result)
  }

const isPieces = (result: unknown): result is AsyncIterable<unknown> =>
  typeof result === 'object' && result !== null && Symbol.asyncIterator in result

async function tellingPromise(result: unknown): Promise<unknown> {
  try {
    return await result
  } catch (error) {
    if (!isOutage(error)) throw error
    throw outageOf(error)
  }
}

async function* tellingPieces(pieces: AsyncIterable<unknown>): AsyncGenerator {
  try {
    yield* pieces
  } catch (error) {
    if (!isOutage(error)) throw error
    throw outageOf(error)
  }
}

function outageOf(cause: unknown): DomainError {
  const outage = new DomainError('database-unavailable', 'The database cannot be reached at the moment.')
  return Object.assign(outage, { cause })
}

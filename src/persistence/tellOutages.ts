import { DomainError } from '../core/fault.ts'
import { isOutage } from './isOutage.ts'

type Method = (...given: unknown[]) => unknown

/**
 * The same store, whose methods say `database-unavailable` where the database cannot be had; the database's own error is its
 * cause. The one place that tells outages from other failures, for every store.
 */
export function tellOutages<T extends object>(store: T): T {
  const told = Object.entries(store).map(([name, method]: [string, Method]) => [name, telling(method)])
  return Object.fromEntries(told) as T
}

const telling =
  (method: Method): Method =>
  async (...given) => {
    try {
      return await method(...given)
    } catch (error) {
      if (!isOutage(error)) throw error
      const outage = new DomainError('database-unavailable', 'The database cannot be reached at the moment.')
      throw Object.assign(outage, { cause: error })
    }
  }

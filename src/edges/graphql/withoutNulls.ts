type Filled<T> = { [K in keyof T]: Exclude<T[K], null> }

/** GraphQL's optional arguments may be null; here a null is the same as absent. */
export function withoutNulls<T extends object>(given: T): Partial<Filled<T>> {
  const filled = Object.entries(given).filter(([, value]) => value !== null && value !== undefined)
  return Object.fromEntries(filled) as Partial<Filled<T>>
}

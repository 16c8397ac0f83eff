import { FaultyInput } from '../core/fault.ts'
import { type Inventory, type Visit, visitsByDate } from '../core/inventory/inventory.ts'

/**
 * A visit of an inventory by its date; the last one, or the first, where none is named.
 * @param pointer where the request names it
 * @throws FaultyInput where there is no such visit, naming those that there are
 */
export function visitNamed(
  { content }: Inventory,
  date: string | undefined,
  pointer = '/visit',
  otherwise: 'first' | 'last' = 'last',
): Visit {
  const visits = visitsByDate(content)
  const visit =
    date === undefined ? visits.at(otherwise === 'last' ? -1 : 0) : visits.find((one) => one.date === date)
  if (visit) return visit
  const known =
    visits.length === 0
      ? 'there are no visits yet; add one first'
      : `visits were on ${visits.map((one) => one.date).join(', ')}`
  throw new FaultyInput([{ pointer, code: 'unknown-visit', message: `There is no such visit: ${known}.` }])
}

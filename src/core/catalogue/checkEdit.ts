import { DomainError, type Fault, FaultyInput } from '../fault.ts'
import type { Catalogue } from './catalogue.ts'
import type { Category } from './category.ts'
import { checkCategory } from './checkCategory.ts'
import { LARGE_FACTOR, type LargeChange, largeChanges } from './largeChanges.ts'
import { nameFaults, ownersOfNames } from './nameFaults.ts'

/**
 * Whether one category of a catalogue may become what an editor wants.
 * @param faults of its shape, to be named with the others
 * @throws FaultyInput with every fault; DomainError large-change
 */
export function checkEdit(
  { categories }: Catalogue,
  after: Category,
  { confirm, faults = [] }: { readonly confirm: boolean; readonly faults?: readonly Fault[] },
): void {
  const before = categories.get(after.code) ?? null
  const others = new Map(categories).set(after.code, after)
  const all = [
    ...faults,
    ...checkCategory(after),
    ...nameFaults(before, after, ownersOfNames(others.values())),
  ]
  if (all.length > 0) throw new FaultyInput(all)
  const large = before === null ? [] : largeChanges(before, after)
  if (large.length > 0 && !confirm) throw largeChangeRefusal(large)
}

/** So many are listed; nobody looks through more of them. */
const SHOWN = 1_000

/** @param changes each may name the category that it is in */
export const largeChangeRefusal = (changes: readonly (LargeChange & { readonly category?: string })[]) =>
  new DomainError(
    'large-change',
    `${changes.length === 1 ? 'A draw figure' : `${changes.length} draw figures`} would change by more than a factor of ` +
      `${LARGE_FACTOR}, or go. changes lists each before and after; where they are meant, send the edit again with confirm.`,
    { changes: changes.slice(0, SHOWN), count: changes.length },
  )

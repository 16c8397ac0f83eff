import type { Catalogue } from './catalogue.ts'
import { type CategoryChange, categoryChange } from './categoryChange.ts'

/**
 * What one has to do to get from one state of a catalogue to another, earlier or later, in the order of the codes. A category
 * that the other lacks counts as retired: nothing is ever removed, so that is how it would be taken back.
 */
export function compareCatalogues(from: Catalogue, to: Catalogue): CategoryChange[] {
  const codes = new Set([...from.categories.keys(), ...to.categories.keys()])
  return [...codes].sort().flatMap((code) => {
    // Most categories are as the same revision left them in both, and need not be looked at field by field.
    if (from.changedIn.get(code) === to.changedIn.get(code)) return []
    const before = from.categories.get(code) ?? null
    const after = to.categories.get(code) ?? { ...before!, retired: true }
    return categoryChange(before, after) ?? []
  })
}

import type { Window } from '../stores/window.ts'

/** A part of an ordered list, and whether the list has something before and after it; exact in both directions. */
export interface Part<T> {
  readonly items: readonly T[]
  readonly hasBefore: boolean
  readonly hasAfter: boolean
}

/**
 * The part of a list that a window shows, for lists that nothing is ever taken out of: what stands at a place that was
 * handed out is still there, so there is something beyond it.
 */
export async function partOf<T, Place>(
  window: Window<Place>,
  list: (window: Window<Place>) => Promise<readonly T[]>,
): Promise<Part<T>> {
  const { after, before, limit, keep } = window
  const found = await list({ ...window, limit: limit + 1 })
  const isCut = found.length > limit
  const cut = isCut ? 1 : 0
  return {
    items: keep === 'first' ? found.slice(0, limit) : found.slice(cut),
    hasBefore: after !== undefined || (keep === 'last' && isCut),
    hasAfter: before !== undefined || (keep === 'first' && isCut),
  }
}

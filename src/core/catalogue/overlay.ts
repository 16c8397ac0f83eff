import type { Category } from './category.ts'

/** The two layers that a catalogue can be made of: everybody's, and an organisation's own over it. */
export const LAYERS = ['shared', 'organisation'] as const
export type Layer = (typeof LAYERS)[number]

/** What one organisation has laid over the shared catalogue, at one of the revisions that it counts by itself. */
export interface Overlay {
  readonly organisation: string
  /** 0 where nothing was ever laid over it. */
  readonly revision: number
  /** By code: each a whole category, under a code that the shared catalogue has, or under one of its own. */
  readonly categories: ReadonlyMap<string, Category>
  /** By code: the overlay revision that gave the category the state that it has here. */
  readonly changedIn: ReadonlyMap<string, number>
}

/** A category as one revision of an overlay left it; null where it was taken away. */
export interface OverlayState {
  readonly code: string
  readonly category: Category | null
  readonly revision: number
}

/** The overlay that one state after the other makes; of each code at most one. */
export function overlayOf(
  organisation: string,
  revision: number,
  states: readonly OverlayState[] = [],
): Overlay {
  const there = states
    .flatMap(({ code, category, revision: changedIn }) => (category ? [{ code, category, changedIn }] : []))
    .sort((a, b) => (a.code < b.code ? -1 : 1))
  return {
    organisation,
    revision,
    categories: new Map(there.map(({ code, category }) => [code, category])),
    changedIn: new Map(there.map(({ code, changedIn }) => [code, changedIn])),
  }
}

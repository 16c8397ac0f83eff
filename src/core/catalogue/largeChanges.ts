import type { Category, CategoryMode, TypicalDraw } from './category.ts'
import { type Span, sharedSpan, spanOf, uncovered } from './drawSpans.ts'

/** A draw figure that an edit would change by more than LARGE_FACTOR, or take away. */
export interface LargeChange {
  /** Where in the category as it would become: the figure, or the list that a draw is gone from. */
  readonly pointer: string
  readonly mode: CategoryMode['mode']
  /** The years of manufacture that this is about; null is open. */
  readonly yearFrom: number | null
  readonly yearTo: number | null
  readonly figure: (typeof FIGURES)[number]
  readonly beforeW: number
  /** Null where no draw speaks of these years any more. */
  readonly afterW: number | null
}

/** The service's own rule, no source: what is changed by more than this was perhaps typed in another unit or the wrong row. */
export const LARGE_FACTOR = 3
const FIGURES = ['lowW', 'typicalW', 'highW'] as const
/** A figure below this counts as this: the smallest step that IEC 62301 asks a meter to resolve, as in estimates. */
const SMALLEST_W = 0.01
/** Lets 0.7 to 2.1 pass, whose quotient in binary is a little above 3. */
const SLACK = 1e-9

/**
 * The draw figures that go up or down by more than a factor of three, for any year of manufacture for which there was
 * a figure before, and those that are gone. A figure for a mode or for years that had none is not a change.
 */
export function largeChanges(before: Category, after: Category): LargeChange[] {
  return before.modes.flatMap((mode) => {
    const index = after.modes.findIndex((other) => other.mode === mode.mode)
    const draws = after.modes[index]?.draws ?? []
    const list = index === -1 ? '/modes' : `/modes/${index}/draws`
    return mode.draws.flatMap((draw) => [
      ...draws.flatMap((other, at) => largeSteps(mode, draw, other, `${list}/${at}`)),
      ...uncovered(spanOf(draw), draws.map(spanOf)).flatMap((span) => gone(mode, draw, span, list)),
    ])
  })
}

function largeSteps(
  { mode }: CategoryMode,
  before: TypicalDraw,
  after: TypicalDraw,
  base: string,
): LargeChange[] {
  const shared = sharedSpan(spanOf(before), spanOf(after))
  if (shared === null) return []
  return FIGURES.filter((figure) => isLarge(before[figure], after[figure])).map((figure) => ({
    pointer: `${base}/${figure}`,
    mode,
    ...yearsOf(shared),
    figure,
    beforeW: before[figure],
    afterW: after[figure],
  }))
}

const gone = ({ mode }: CategoryMode, draw: TypicalDraw, span: Span, pointer: string): LargeChange[] =>
  FIGURES.map((figure) => ({
    pointer,
    mode,
    ...yearsOf(span),
    figure,
    beforeW: draw[figure],
    afterW: null,
  }))

const yearsOf = ({ from, to }: Span) => ({
  yearFrom: from === -Infinity ? null : from,
  yearTo: to === Infinity ? null : to,
})

function isLarge(before: number, after: number): boolean {
  const [one, other] = [Math.max(before, SMALLEST_W), Math.max(after, SMALLEST_W)]
  return Math.max(one, other) / Math.min(one, other) > LARGE_FACTOR * (1 + SLACK)
}

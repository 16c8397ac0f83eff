import type { TypicalDraw } from './category.ts'

/** Years of manufacture, both ends included; -Infinity and Infinity where they are open. */
export interface Span {
  readonly from: number
  readonly to: number
}

export const spanOf = ({ yearFrom, yearTo }: TypicalDraw): Span => ({
  from: yearFrom ?? -Infinity,
  to: yearTo ?? Infinity,
})

/** The years that both speak of; null where there are none. */
export function sharedSpan(a: Span, b: Span): Span | null {
  const shared = { from: Math.max(a.from, b.from), to: Math.min(a.to, b.to) }
  return shared.from <= shared.to ? shared : null
}

/** The parts of a span that no other covers, in order. */
export function uncovered(span: Span, others: readonly Span[]): Span[] {
  return others.reduce<Span[]>(
    (left, other) =>
      left.flatMap(({ from, to }) => [
        ...(other.from > from ? [{ from, to: Math.min(to, other.from - 1) }] : []),
        ...(other.to < to ? [{ from: Math.max(from, other.to + 1), to }] : []),
      ]),
    [span],
  )
}

import type { Fault } from '../fault.ts'
import type { TypicalDraw } from './category.ts'

interface Span {
  readonly index: number
  readonly from: number
  readonly to: number
}

/**
 * Rule between the draws of one mode: every year of manufacture between the first and the last that they speak of
 * is covered by exactly one of them. A null yearFrom reaches back without end and a null yearTo forward without
 * end, so an all-open draw stands alone. Draws whose own years are upside down are left to checkDraw.ts.
 */
export function checkDrawYears(draws: readonly TypicalDraw[], base: string): Fault[] {
  const spans = draws
    .map(({ yearFrom, yearTo }, index) => ({ index, from: yearFrom ?? -Infinity, to: yearTo ?? Infinity }))
    .filter(({ from, to }) => from <= to)
    .sort((a, b) => a.from - b.from || a.index - b.index)
  const faults: Fault[] = []
  let reached = spans[0]!
  for (const span of spans.slice(1)) {
    faults.push(...seamFaults(reached, span, base))
    if (span.to > reached.to) reached = span
  }
  return faults
}

function seamFaults(before: Span, after: Span, base: string): Fault[] {
  const pointer = `${base}/${after.index}/yearFrom`
  if (after.from <= before.to) {
    const message = `The years ${inWords(after)} overlap with those of another draw (${inWords(before)}); one year, one figure.`
    return [{ pointer, code: 'years-overlap', message }]
  }
  if (after.from === before.to + 1) return []
  const hole = { from: before.to + 1, to: after.from - 1 }
  const message = `No draw covers the years ${inWords(hole)}; move this yearFrom or the yearTo before it.`
  return [{ pointer, code: 'years-hole', message }]
}

function inWords({ from, to }: Pick<Span, 'from' | 'to'>): string {
  if (from === -Infinity && to === Infinity) return 'of all time'
  if (from === -Infinity) return `up to ${to}`
  if (to === Infinity) return `from ${from} on`
  return from === to ? `${from}` : `${from} to ${to}`
}

import type { CategoryMode, Range, TypicalDraw } from './category.ts'

export interface ChosenDraw {
  readonly range: Range
  readonly provenance: TypicalDraw['provenance']['kind']
  /** `year` where the year of manufacture chose it, `nearest-year` where none covers it, `all-years` where no year is known. */
  readonly chosenBy: 'only' | 'year' | 'nearest-year' | 'all-years'
}

const rangeOf = ({ lowW, typicalW, highW }: TypicalDraw): Range => ({
  low: lowW,
  typical: typicalW,
  high: highW,
})
const covers = (draw: TypicalDraw, year: number) =>
  (draw.yearFrom ?? -Infinity) <= year && year <= (draw.yearTo ?? Infinity)
const yearsAway = (draw: TypicalDraw, year: number) =>
  Math.max((draw.yearFrom ?? -Infinity) - year, year - (draw.yearTo ?? Infinity))

/**
 * The typical draw for a year of manufacture. Without a year the figures of all years are one: from the lowest low
 * to the highest high, around the geometric mean of the typicals, so that not knowing the year makes the interval
 * wider (the service's own rule, no source).
 */
export function drawFor({ draws }: CategoryMode, year: number | undefined): ChosenDraw {
  if (draws.length === 1)
    return { range: rangeOf(draws[0]!), provenance: draws[0]!.provenance.kind, chosenBy: 'only' }
  if (year === undefined) return allYears(draws)
  const exact = draws.find((draw) => covers(draw, year))
  const draw = exact ?? [...draws].sort((a, b) => yearsAway(a, year) - yearsAway(b, year))[0]!
  return { range: rangeOf(draw), provenance: draw.provenance.kind, chosenBy: exact ? 'year' : 'nearest-year' }
}

function allYears(draws: readonly TypicalDraw[]): ChosenDraw {
  const logarithms = draws.reduce((sum, { typicalW }) => sum + Math.log(Math.max(typicalW, 1e-6)), 0)
  const range = {
    low: Math.min(...draws.map(({ lowW }) => lowW)),
    typical: Math.exp(logarithms / draws.length),
    high: Math.max(...draws.map(({ highW }) => highW)),
  }
  const kinds = draws.map(({ provenance }) => provenance.kind)
  const provenance = (['sample', 'programme', 'published'] as const).find((kind) => kinds.includes(kind))!
  return { range, provenance, chosenBy: 'all-years' }
}

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
const yearsAway = (draw: TypicalDraw, year: number) =>
  Math.max((draw.yearFrom ?? -Infinity) - year, year - (draw.yearTo ?? Infinity), 0)

/**
 * The typical draw for a year of manufacture. Without a year the figures of all years are one: from the lowest low
 * to the highest high, around the geometric mean of the typicals, so that not knowing the year makes the interval
 * wider (the service's own rule, no source).
 *
 * The same choice is the same object for as long as the mode is held, so that what is worked out from it can be kept.
 */
export function drawFor(mode: CategoryMode, year: number | undefined): ChosenDraw {
  const { draws } = mode
  if (draws.length === 1) return kept(mode, 'only', draws[0]!)
  if (year === undefined) return kept(mode, 'all-years', null)
  const nearest = draws.reduce((best, draw) => (yearsAway(draw, year) < yearsAway(best, year) ? draw : best))
  return kept(mode, yearsAway(nearest, year) === 0 ? 'year' : 'nearest-year', nearest)
}

const choices = new WeakMap<CategoryMode, ChosenDraw[]>()

function kept(mode: CategoryMode, chosenBy: ChosenDraw['chosenBy'], draw: TypicalDraw | null): ChosenDraw {
  const known = choices.get(mode) ?? []
  choices.set(mode, known)
  const choice = draw
    ? { range: rangeOf(draw), provenance: draw.provenance.kind, chosenBy }
    : { ...allYears(mode.draws), chosenBy }
  const same = known.find((one) => one.chosenBy === chosenBy && sameRange(one.range, choice.range))
  if (!same) known.push(choice)
  return same ?? choice
}

const sameRange = (a: Range, b: Range) => a.low === b.low && a.typical === b.typical && a.high === b.high

function allYears(draws: readonly TypicalDraw[]): Pick<ChosenDraw, 'range' | 'provenance'> {
  const logarithms = draws.reduce((sum, { typicalW }) => sum + Math.log(Math.max(typicalW, 1e-6)), 0)
  const range = {
    low: Math.min(...draws.map(({ lowW }) => lowW)),
    typical: Math.exp(logarithms / draws.length),
    high: Math.max(...draws.map(({ highW }) => highW)),
  }
  const kinds = draws.map(({ provenance }) => provenance.kind)
  const provenance = (['sample', 'programme', 'published'] as const).find((kind) => kinds.includes(kind))!
  return { range, provenance }
}

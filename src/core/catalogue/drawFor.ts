import type { CategoryMode, Range, TypicalDraw } from './category.ts'

export interface ChosenDraw {
  readonly range: Range
  readonly provenance: TypicalDraw['provenance']['kind']
  /** `year` where the year of manufacture chose it, `nearest-year` where none covers it, `all-years` where no year is known. */
  readonly chosenBy: 'only' | 'year' | 'nearest-year' | 'all-years'
}

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
  const choices = choicesOf(mode)
  if (choices.only) return choices.only
  if (year === undefined) return choices.allYears
  const nearest = mode.draws.reduce((best, draw) =>
    yearsAway(draw, year) < yearsAway(best, year) ? draw : best,
  )
  return (yearsAway(nearest, year) === 0 ? choices.ofYear : choices.nearest).get(nearest)!
}

/** All that can be chosen from one mode's draws. */
interface Choices {
  readonly only: ChosenDraw | null
  readonly allYears: ChosenDraw
  readonly ofYear: ReadonlyMap<TypicalDraw, ChosenDraw>
  readonly nearest: ReadonlyMap<TypicalDraw, ChosenDraw>
}

const known = new WeakMap<CategoryMode, Choices>()

function choicesOf(mode: CategoryMode): Choices {
  const choices = known.get(mode)
  if (choices) return choices
  const made = makeChoices(mode.draws)
  known.set(mode, made)
  return made
}

function makeChoices(draws: readonly TypicalDraw[]): Choices {
  const each = (chosenBy: ChosenDraw['chosenBy']) =>
    new Map(draws.map((draw) => [draw, chosen(draw, chosenBy)]))
  return {
    only: draws.length === 1 ? chosen(draws[0]!, 'only') : null,
    allYears: allYears(draws),
    ofYear: each('year'),
    nearest: each('nearest-year'),
  }
}

const chosen = (
  { lowW, typicalW, highW, provenance }: TypicalDraw,
  chosenBy: ChosenDraw['chosenBy'],
): ChosenDraw => ({
  range: { low: lowW, typical: typicalW, high: highW },
  provenance: provenance.kind,
  chosenBy,
})

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

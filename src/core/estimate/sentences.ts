import type { ChosenDraw } from '../catalogue/drawFor.ts'
import type { Mode } from '../catalogue/category.ts'
import type { Layer } from '../catalogue/overlay.ts'
import type { Warning } from './estimate.ts'

const PROVENANCE = {
  sample: 'an invented sample figure',
  published: 'a published figure',
  programme: 'a figure from a programme’s readings',
} as const

const shown = (watts: number) => Number(watts.toPrecision(3))

const known = new WeakMap<ChosenDraw, string>()

/** A draw's figures as text, kept with the draw: they are in the sentence of every device that nobody read. */
function figuresOf(draw: ChosenDraw): string {
  const figures = known.get(draw)
  if (figures !== undefined) return figures
  const { low, typical, high } = draw.range
  const made = `${shown(low)} W, ${shown(typical)} W, ${shown(high)} W`
  known.set(draw, made)
  return made
}

/** What an estimate says in words about where its power came from. */
export const sentencesOf = {
  behind: (quantity: number): string => (quantity > 1 ? ` One reading stands for all ${quantity}.` : ''),

  typical(
    name: string,
    mode: Mode,
    draw: ChosenDraw,
    year: number | undefined,
    quantity: number,
    layer: Layer,
  ) {
    const each = quantity > 1 ? ` each, ${quantity} independent draws` : ''
    const made = year === undefined ? '' : ` made in ${year}`
    const whose = layer === 'organisation' ? ' of the organisation’s own' : ''
    return `Typical draw of ${name}${made} in ${mode}: ${figuresOf(draw)} (5th, 50th, 95th percentile)${each}; ${PROVENANCE[draw.provenance]}${whose}, not a measurement.`
  },

  yearWarnings(mode: Mode, { chosenBy }: ChosenDraw, year: number | undefined): Warning[] {
    if (chosenBy === 'all-years')
      return [
        {
          code: 'year-unknown',
          message: `The typical draw in ${mode} depends on the year of manufacture; without a year the figures of all years count as one wide range. Give the year to narrow it.`,
        },
      ]
    if (chosenBy === 'nearest-year')
      return [
        {
          code: 'year-outside-figures',
          message: `The catalogue has no figure in ${mode} for a device made in ${year}; the nearest years' figure is used.`,
        },
      ]
    return []
  },
} as const

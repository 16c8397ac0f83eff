import type { Category, Mode } from '../catalogue/category.ts'
import { drawFor } from '../catalogue/drawFor.ts'

/** What one device of a category usually draws, W; what a reading is held against. */
export interface UsualDraw {
  /** Of the category, for sentences. */
  readonly name: string
  readonly low: number
  readonly high: number
}

/**
 * The catalogue's range for a device: of its mode and year of manufacture, or of all the category's modes where the mode
 * is not known or the catalogue has no figure in it.
 */
export function usualDraw(category: Category, mode?: Mode, year?: number): UsualDraw {
  const known = category.modes.filter((one) => one.mode === mode)
  const ranges = (known.length > 0 ? known : category.modes).map((one) => drawFor(one, year).range)
  return {
    name: category.name,
    low: Math.min(...ranges.map(({ low }) => low)),
    high: Math.max(...ranges.map(({ high }) => high)),
  }
}

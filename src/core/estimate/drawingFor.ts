import type { Household } from '../inventory/household.ts'
import { drawingOf } from '../quantity/drawing.ts'
import type { Drawing } from '../quantity/term.ts'

/** JCGM 101:2008, 7.2.2 asks for 10^4/(1 - p) draws or more: 10^5 for intervals of 0.9. */
const USUAL_DRAWS = 100_000
const USUAL_SEED = 1

/** How a household's sums are to be drawn, or null where they are to be convolved. */
export function drawingFor({ method, draws, seed }: Household): Drawing | null {
  return method === 'monte-carlo' ? drawingOf(draws ?? USUAL_DRAWS, seed ?? USUAL_SEED) : null
}

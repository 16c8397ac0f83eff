import type { Household } from '../inventory/household.ts'
import { drawingOf } from '../quantity/drawing.ts'
import type { Drawing } from '../quantity/term.ts'
import { mostDraws } from './drawLimits.ts'

const USUAL_SEED = 1

/**
 * How a household's sums are to be drawn, or null where they are to be convolved. As many draws as its modes leave room
 * for where a caller names no number.
 */
export function drawingFor({ method, draws, seed }: Household, modes: number): Drawing | null {
  return method === 'monte-carlo' ? drawingOf(draws ?? mostDraws(modes), seed ?? USUAL_SEED) : null
}

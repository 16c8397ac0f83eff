import type { Catalogue } from '../catalogue/catalogue.ts'
import { findCategory } from '../catalogue/findCategory.ts'
import type { Fault } from '../fault.ts'
import { isObject, list, text } from '../inventory/lenient.ts'
import { LEAST_DRAWS, MOST_DRAWN, mostDraws } from './drawLimits.ts'

/** Longer lists are refused by their shape. */
const MOST_COUNTED = 500

/**
 * What can be wrong with how sums are to be drawn, checked on whatever of the raw input can be read: draws and seed belong
 * to the Monte Carlo alone, and the household must leave room for the draws.
 */
export function checkDrawing(raw: unknown, catalogue: Catalogue): Fault[] {
  if (!isObject(raw)) return []
  if (raw['method'] === 'monte-carlo') return roomFor(raw['draws'], modesIn(raw, catalogue))
  return raw['method'] === undefined || raw['method'] === 'convolution'
    ? ['draws', 'seed'].filter((field) => raw[field] !== undefined).map(needsMonteCarlo)
    : []
}

const needsMonteCarlo = (field: string): Fault => ({
  pointer: `/${field}`,
  code: 'needs-monte-carlo',
  message: `${field} has no meaning without method "monte-carlo": give that method, too, or leave ${field} out.`,
})

/** Modes that will be drawn: those given, or all that the catalogue knows for the category. */
function modesIn(raw: Record<string, unknown>, catalogue: Catalogue): number {
  const counts = list(raw['devices'])
    .slice(0, MOST_COUNTED)
    .map(({ modes, category }) =>
      Array.isArray(modes)
        ? modes.length
        : (findCategory(catalogue, text(category) ?? '')?.modes.length ?? 0),
    )
  return counts.reduce((sum, count) => sum + count, 0)
}

function roomFor(draws: unknown, modes: number): Fault[] {
  const most = mostDraws(Math.max(modes, 1))
  if (most < LEAST_DRAWS) {
    const atMost = MOST_DRAWN / LEAST_DRAWS
    const message = `method "monte-carlo" takes at most ${atMost} modes of devices together, not ${modes}. Leave it out: the usual method takes them all.`
    return [{ pointer: '/method', code: 'too-many-modes', message }]
  }
  if (typeof draws !== 'number' || draws <= most) return []
  const message = `${draws} draws of ${modes} modes of devices are more than ${MOST_DRAWN} together. Give at most ${most} draws, or none to have so many.`
  return [{ pointer: '/draws', code: 'too-many-draws', message }]
}

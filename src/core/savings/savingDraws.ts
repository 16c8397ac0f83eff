import { isExact } from '../quantity/distribution.ts'
import { drawingOf } from '../quantity/drawing.ts'
import { exact } from '../quantity/exact.ts'
import { monteCarloDraws } from '../quantity/monteCarlo.ts'
import type { Drawing, Term } from '../quantity/term.ts'
import type { Drawn, Load, Power, Weight } from './load.ts'
import { HOURS_PER_WEEK } from './meanSaving.ts'
import { afterParts, type Part } from './part.ts'
import type { PlanHousehold } from './planHousehold.ts'

/**
 * Draws behind each interval and probability. With another seed an interval's ends would move by some 0.7 % of its width
 * (standard error at coverage 0.9), and a probability by 0.005 at most.
 */
const USUAL_DRAWS = 10_000
const USUAL_SEED = 1

/** Draws of what a set of measures saves. */
export interface SavingDraws {
  /** kWh/yr */
  readonly kwh: Float64Array
  /** What the saved hours are dearer than even ones, currency/yr; null where none has a price of its own. */
  readonly surcharge: Float64Array | null
}

export const planDrawing = ({ resolved }: PlanHousehold): Drawing =>
  resolved.drawing ?? drawingOf(USUAL_DRAWS, USUAL_SEED)

/**
 * What measures save in each draw of all that is uncertain: the energy of the household before less that after, each
 * reckoned from the same draw, so that what both share cancels. Drawn as the core draws sums (quantity/monteCarlo.ts):
 * by stream, so that a power, a meter's gain or the supply's voltage is one figure wherever it stands.
 */
export function savingDraws(parts: readonly Part[], household: PlanHousehold, draw: DrawOf): SavingDraws {
  const { loads, weeksPerYear } = household
  const places = [...new Set(parts.flatMap((part) => part.places))]
  const changes = places.flatMap((place) => {
    const before = loads[place]!
    const after = afterParts(place, before, parts)
    return [
      ...before.map((load) => ({ load, by: weeksPerYear / 1000 })),
      ...after.map((load) => ({ load, by: -weeksPerYear / 1000 })),
    ]
  })
  const kwh = new Float64Array(draw.count)
  const isDearer = changes.some(({ load }) => load.hours.surcharge !== 0)
  const surcharge = isDearer ? new Float64Array(draw.count) : null
  for (const { load, by } of changes) {
    const energy = energyOf(load, by, draw)
    if (energy === null) continue
    const price = load.hours.surcharge
    for (let i = 0; i < kwh.length; i++) kwh[i]! += energy[i]!
    if (surcharge && price !== 0) for (let i = 0; i < kwh.length; i++) surcharge[i]! += price * energy[i]!
  }
  const perWatt = (HOURS_PER_WEEK * weeksPerYear) / 1000
  for (const { ownDraw } of parts) {
    const watts = ownDraw && draw.power(ownDraw)
    if (watts) for (let i = 0; i < kwh.length; i++) kwh[i]! -= watts[i]! * perWatt
  }
  return { kwh, surcharge }
}

/** One load in all draws, kWh/yr times a factor; null where a measure takes all of it for certain. */
function energyOf({ power, hours, weights }: Load, by: number, draw: DrawOf): Float64Array | null {
  if (weights.some(({ persistence, share, isRest }) => isRest && isNone(persistence, share))) return null
  const energy = draw.power(power).map((watts) => watts * by)
  const week = draw.factor(hours)
  for (let i = 0; i < energy.length; i++) energy[i]! *= week[i]!
  for (const weight of weights) multiply(energy, weight, draw)
  return energy
}

const isNone = ({ distribution }: Drawn, share: number) =>
  isExact(distribution) && share * distribution.mean === 1

function multiply(energy: Float64Array, { persistence, share, isRest }: Weight, draw: DrawOf): void {
  const kept = draw.factor(persistence)
  if (isRest) for (let i = 0; i < energy.length; i++) energy[i]! *= 1 - share * kept[i]!
  else for (let i = 0; i < energy.length; i++) energy[i]! *= share * kept[i]!
}

/** The draws of each power and factor, each made once. */
export interface DrawOf {
  readonly count: number
  power(power: Power): Float64Array
  factor(drawn: Drawn): Float64Array
}

export function drawOf(drawing: Drawing): DrawOf {
  const known = new Map<object, Float64Array>()
  const once = (key: object, term: () => Term, stream: number) => {
    const draws =
      known.get(key) ??
      monteCarloDraws([{ ...term(), drawn: { drawing, stream } }], drawing.draws, drawing.seed)
    known.set(key, draws)
    return draws
  }
  return {
    count: drawing.draws,
    power: (power) => once(power, () => power.term, power.stream),
    factor: (drawn) =>
      once(
        drawn,
        () => ({
          coefficient: 1,
          factors: [...Array.from({ length: drawn.factor }, () => exact(1)), drawn.distribution],
        }),
        drawn.stream,
      ),
  }
}

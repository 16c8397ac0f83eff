import type { Mode } from '../catalogue/category.ts'
import type { AvailableMeasure } from './availableMeasure.ts'
import { type Drawn, type Load, type Power, weighted } from './load.ts'

/** One measure at one place of the household: a strip at an outlet, anything else at a device. */
export interface Part {
  /** Name within the answer. */
  readonly id: string
  readonly measure: AvailableMeasure
  /** Places of the devices that it works on. */
  readonly places: readonly number[]
  readonly outlet: string | null
  /** How many are bought, set or done: one for each of a device's quantity, one strip. */
  readonly count: number
  /** Of all of them, in minor units of the currency. */
  readonly cost: number
  readonly persistence: Drawn
  /** What all of them draw themselves, W; null where nothing. */
  readonly ownDraw: Power | null
  /** Of a timer: the share of the device's hours that it takes. */
  readonly hoursShare: number
  /** What the device draws instead: after a setting, or the new device's. */
  readonly newPower: Power | null
  readonly notes: readonly { readonly code: string; readonly message: string }[]
}

/** Measures that change what the device draws. The others cut it off, one at most, and come after these. */
export const worksInside = ({ measure: { kind } }: Part): boolean =>
  kind === 'setting' || kind === 'replacement'

/**
 * The loads of a device after a measure. Settings and replacements come first and whatever cuts the device off works on
 * what they leave, so that nothing is saved twice.
 */
function applied(part: Part, loads: readonly Load[]): readonly Load[] {
  const { measure, persistence, newPower, hoursShare } = part
  if (measure.kind === 'replacement') return loads.flatMap((load) => changed(load, persistence, newPower!))
  if (measure.kind === 'setting')
    return loads.flatMap((load) =>
      load.mode === measure.fromMode ? changed(load, persistence, newPower!, measure.toMode!) : [load],
    )
  return loads.map((load) => weighted(load, persistence, hoursShare, true))
}

/** The hours in which the measure has lapsed, and those in which the device draws its new power. */
const changed = (load: Load, persistence: Drawn, power: Power, mode: Mode = load.mode): Load[] => [
  weighted(load, persistence, 1, true),
  { ...weighted(load, persistence, 1, false), power, mode },
]

/** Those that work inside first, in the order in which they are available. */
const inOrder = (parts: readonly Part[]): readonly Part[] =>
  parts.toSorted(
    (a, b) => Number(worksInside(b)) - Number(worksInside(a)) || a.measure.place - b.measure.place,
  )

/** The loads of one device after all parts of a set that work on it. */
export const afterParts = (place: number, loads: readonly Load[], parts: readonly Part[]): readonly Load[] =>
  inOrder(parts.filter(({ places }) => places.includes(place))).reduce(
    (left, part) => applied(part, left),
    loads,
  )

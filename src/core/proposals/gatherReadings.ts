import type { CategoryMode, TypicalDraw } from '../catalogue/category.ts'
import { sharedSpan, spanOf } from '../catalogue/drawSpans.ts'
import { oneReadingEach } from './oneReadingEach.ts'
import type { ReadDevice } from './readDevice.ts'

/** Readings that do not count, by the reason why. */
export interface LeftOut {
  /** Of several devices at once: what each of them draws is not known. */
  readonly severalDevices: number
  /** Series of samples that are not stable, or too short to tell. */
  readonly notStable: number
  /** The mode has figures by years of manufacture, and the device's year is not known, or lies beyond all of them. */
  readonly noFittingYear: number
}

/** The readings that speak of one typical draw. */
export interface Gathered {
  /** Real power of each device, W, ascending. */
  readonly sortedW: readonly number[]
  readonly households: number
  readonly organisations: number
  readonly leftOut: LeftOut
}

/**
 * The readings behind one typical draw of a category's mode: one for each device, of single devices, stable, and of the years of
 * manufacture that the draw speaks of. Where the mode has one draw only, devices of every year count, as estimates use it for all.
 * @param readings of the category, in any modes
 */
export function gatherReadings(
  { mode, draws }: CategoryMode,
  draw: TypicalDraw,
  defaultQuantity: number,
  readings: readonly ReadDevice[],
): Gathered {
  const each = byHousehold(readings.filter((reading) => reading.mode === mode)).flatMap(oneReadingEach)
  const single = each.filter(({ quantity }) => (quantity ?? defaultQuantity) === 1)
  const stable = single.filter(({ watts }) => watts !== null)
  const fits = (reading: ReadDevice, one: TypicalDraw) => draws.length === 1 || isOfYears(reading, one)
  const ours = stable.filter((reading) => fits(reading, draw))
  return {
    sortedW: ours.map(({ watts }) => watts!).sort((one, other) => one - other),
    households: new Set(ours.map(householdOf)).size,
    organisations: new Set(ours.map(({ organisation }) => organisation)).size,
    leftOut: {
      severalDevices: each.length - single.length,
      notStable: single.length - stable.length,
      noFittingYear: stable.filter((reading) => !draws.some((one) => fits(reading, one))).length,
    },
  }
}

const householdOf = ({ organisation, inventory }: ReadDevice) => `${organisation}/${inventory}`

function byHousehold(readings: readonly ReadDevice[]): ReadDevice[][] {
  const households = new Map<string, ReadDevice[]>()
  for (const reading of readings) {
    const known = households.get(householdOf(reading))
    if (known) known.push(reading)
    else households.set(householdOf(reading), [reading])
  }
  return [...households.values()]
}

const isOfYears = ({ year }: ReadDevice, draw: TypicalDraw) =>
  year !== null && sharedSpan(spanOf(draw), { from: year, to: year }) !== null

import type { Group } from '../catalogue/category.ts'
import type { ResolvedDevice } from '../estimate/resolveHousehold.ts'
import type { AvailableMeasure } from './availableMeasure.ts'
import type { Offer, RefusalCode } from './offered.ts'
import type { Part } from './part.ts'
import { partOf } from './partOf.ts'
import type { PlanHousehold } from './planHousehold.ts'
import type { PlanOptions } from './savingsRequest.ts'

/**
 * What heats, washes or cooks belongs on an outlet of its own, not on a strip.
 * Source: Fermilab, safety note on power strips and extension cords, March 2015, as in seed/cautions.csv.
 */
const FIXED_OUTLET_GROUPS: readonly Group[] = ['kitchen', 'laundry', 'comfort']
/** Categories of the sample catalogue that are strips themselves. */
const STRIPS: readonly string[] = ['power-strip-with-protection']

/** All devices of one outlet, those that must stay powered too. */
export interface OutletGroup {
  readonly outlet: string
  readonly devices: readonly ResolvedDevice[]
}

/**
 * A strip for what may be switched off at one outlet, as one piece for all of it; null where fewer than two plugs are
 * left for it. The loads that are known are added up, and the strip is refused where they are over what it may carry.
 */
export function offerStrip(
  measure: AvailableMeasure,
  { outlet, devices }: OutletGroup,
  suits: (device: ResolvedDevice) => boolean,
  options: PlanOptions,
  household: PlanHousehold,
  stream: number,
): Offer | null {
  const meant = devices.filter(suits)
  if (plugsOf(meant) < 2) return null
  const fixed = meant.filter(({ category }) => FIXED_OUTLET_GROUPS.includes(category.group))
  const on = meant.filter((device) => !fixed.includes(device))
  const refused = (code: RefusalCode, message: string): Offer => ({
    refusal: { measureCode: measure.code, deviceIds: meant.map(({ id }) => id), outlet, code, message },
  })
  if (hasStrip(devices, outlet, options))
    return refused(
      'strip-behind-strip',
      `There is a power strip at "${outlet}" already, and one strip must never be plugged into another. Put the switchable strip in its place, straight into the fixed outlet, and then plan again.`,
    )
  if (plugsOf(on) < 2)
    return refused(
      'needs-fixed-outlet',
      `At "${outlet}" fewer than two plugs are left for a strip: ${namesOf(fixed)} belong on fixed outlets of their own.`,
    )
  if (plugsOf(on) > measure.outlets!)
    return refused(
      'too-few-outlets',
      `${plugsOf(on)} plugs at "${outlet}" do not fit into the ${measure.outlets} of this strip. Never add a second strip behind it; choose a larger one.`,
    )
  const [load, most] = [knownLoad(on, options), ratedLoad(measure, household)]
  if (most !== null && load.watts > most)
    return refused(
      'over-rated-load',
      `The devices at "${outlet}" take up to ${load.watts} W together, more than the ${most} W that this strip may carry. Plug the largest straight into a fixed outlet and leave its outlet name out, or choose a strip that may carry more.`,
    )
  const elsewhere = devices.filter((device) => !on.includes(device))
  const notes = [...notesOnLoad(load.unknown, most), ...notesOnOthers(elsewhere, outlet)]
  return {
    part: partOf({ measure, devices: on, outlet, count: 1, household, stream, fields: { notes } }),
  }
}

const plugsOf = (devices: readonly ResolvedDevice[]) =>
  devices.reduce((sum, { quantity }) => sum + quantity, 0)
const namesOf = (devices: readonly ResolvedDevice[]) =>
  devices.map(({ device, category }) => device.label ?? category.name).join(', ')

const hasStrip = (
  devices: readonly ResolvedDevice[],
  outlet: string,
  { outletsWithStrip = [] }: PlanOptions,
): boolean =>
  outletsWithStrip.includes(outlet) || devices.some(({ category }) => STRIPS.includes(category.code))

/** W; the lower of what it may carry in W and in A at the supply's nominal voltage. */
function ratedLoad({ ratedLoadW, ratedLoadA }: AvailableMeasure, { resolved }: PlanHousehold): number | null {
  const byCurrent = ratedLoadA === null ? Infinity : ratedLoadA * resolved.used.supply.volts
  const least = Math.min(ratedLoadW ?? Infinity, byCurrent)
  return least === Infinity ? null : least
}

function knownLoad(on: readonly ResolvedDevice[], { devices: told = [] }: PlanOptions) {
  const rated = new Map(told.map(({ deviceId, ratedWatts }) => [deviceId, ratedWatts]))
  const watts = on.reduce((sum, { id, quantity }) => sum + quantity * (rated.get(id) ?? 0), 0)
  return { watts, unknown: on.filter(({ id }) => !rated.has(id)) }
}

function notesOnLoad(unknown: readonly ResolvedDevice[], most: number | null): Part['notes'] {
  if (unknown.length === 0 && most !== null) return []
  const message =
    most === null
      ? 'What this strip may carry is not known; read it off the strip, and add up the labels of the devices.'
      : `Add up what the labels say of ${namesOf(unknown)} and the rest, and stay below ${most} W altogether; give each as ratedWatts to have it checked.`
  return [{ code: 'rated-load-unknown', message }]
}

function notesOnOthers(elsewhere: readonly ResolvedDevice[], outlet: string): Part['notes'] {
  if (elsewhere.length === 0) return []
  const message = `Plug ${namesOf(elsewhere)} straight into a fixed outlet and not into the strip at "${outlet}": what must stay powered, and what heats, washes or cooks, does not belong on it.`
  return [{ code: 'plug-elsewhere', message }]
}

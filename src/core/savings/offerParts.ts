import type { ResolvedDevice } from '../estimate/resolveHousehold.ts'
import type { AvailableMeasure } from './availableMeasure.ts'
import { meanSaving } from './meanSaving.ts'
import { offerAtDevice } from './offerAtDevice.ts'
import type { Offer, Refusal } from './offered.ts'
import { offerStrip, type OutletGroup } from './offerStrip.ts'
import type { Part } from './part.ts'
import { STREAMS_OF_PART } from './partOf.ts'
import type { PlanHousehold } from './planHousehold.ts'
import type { PlanOptions } from './savingsRequest.ts'

/**
 * Every measure at every place where it can be taken, and those that can't, with the reason. A device that must stay
 * powered is in none of them.
 */
export function offerParts(
  measures: readonly AvailableMeasure[],
  options: PlanOptions,
  household: PlanHousehold,
): { readonly parts: readonly Part[]; readonly refusals: readonly Refusal[] } {
  const outlets = outletGroups(household.devices)
  let stream = household.firstFreeStream
  const next = () => (stream += STREAMS_OF_PART) - STREAMS_OF_PART
  const offers = measures.flatMap((measure) => {
    const meant = (device: ResolvedDevice) => suits(measure, device)
    const found: (Offer | null)[] =
      measure.kind === 'switchable-strip'
        ? outlets.map((group) => offerStrip(measure, group, meant, options, household, next()))
        : household.devices.filter(meant).map((device) => offerAtDevice(measure, device, household, next()))
    return found.flatMap((offer) => (offer ? [checked(offer, household)] : []))
  })
  return {
    parts: offers.flatMap((offer) => ('part' in offer ? [offer.part] : [])),
    refusals: offers.flatMap((offer) => ('refusal' in offer ? [offer.refusal] : [])),
  }
}

/** Devices by the name of their outlet, in the order of the inventory. */
function outletGroups(devices: readonly ResolvedDevice[]): OutletGroup[] {
  const groups = new Map<string, ResolvedDevice[]>()
  for (const device of devices) {
    const { outlet } = device.device
    if (outlet === undefined) continue
    groups.set(outlet, [...(groups.get(outlet) ?? []), device])
  }
  return [...groups].map(([outlet, members]) => ({ outlet, devices: members }))
}

const suits = ({ devices, categories }: AvailableMeasure, { id, category }: ResolvedDevice): boolean =>
  category.keepPowered === null &&
  (devices?.includes(id) ?? (categories.length === 0 || categories.includes(category.code)))

/** A measure whose price is in other money, or that saves nothing on average, is no offer. */
function checked(offer: Offer, household: PlanHousehold): Offer {
  if ('refusal' in offer) return offer
  const { measure, places, outlet } = offer.part
  const { currency } = household.resolved.used.tariff
  const refusal = (code: Refusal['code'], message: string): Offer => ({
    refusal: {
      measureCode: measure.code,
      deviceIds: places.map((place) => household.devices[place]!.id),
      outlet,
      code,
      message,
    },
  })
  if (measure.price > 0 && measure.currency !== null && measure.currency !== currency)
    return refusal(
      'price-in-other-currency',
      `Its price is in ${measure.currency}, but the tariff is in ${currency}; give its price in ${currency}.`,
    )
  if (meanSaving([offer.part], household).kwh > NOTHING) return offer
  return refusal(
    'saves-nothing',
    'On average it would save nothing here: there are no hours that it changes, or it draws as much itself.',
  )
}

/** kWh/yr below which a saving is the rounding of a sum. */
const NOTHING = 1e-9

import { triangular } from '../quantity/triangular.ts'
import { modesOf, modeTerms } from '../estimate/estimateMode.ts'
import type { ResolvedDevice } from '../estimate/resolveHousehold.ts'
import type { AvailableMeasure } from './availableMeasure.ts'
import type { Power } from './load.ts'
import type { Offer, RefusalCode } from './offered.ts'
import type { Part } from './part.ts'
import { partOf } from './partOf.ts'
import { type PlanHousehold, powerOf } from './planHousehold.ts'

/** A measure at one device; null where it is not meant for such a device. */
export function offerAtDevice(
  measure: AvailableMeasure,
  device: ResolvedDevice,
  household: PlanHousehold,
  stream: number,
): Offer | null {
  const { id, quantity } = device
  const hours = meanHours(household, device)
  const refused = (code: RefusalCode, message: string): Offer => ({
    refusal: { measureCode: measure.code, deviceIds: [id], outlet: null, code, message },
  })
  const part = (fields: Partial<Part>): Offer => ({
    part: partOf({ measure, devices: [device], outlet: null, count: quantity, household, stream, fields }),
  })
  switch (measure.kind) {
    case 'timer':
      return part({ hoursShare: hours > 0 ? Math.min(1, measure.hoursOffPerWeek! / hours) : 0 })
    case 'replacement':
      return part({ newPower: drawOfNew(measure, quantity, stream) })
    case 'setting': {
      if (hoursIn(household, device, measure) === 0) return null
      const newPower = powerAfterSetting(measure, device, household)
      return newPower
        ? part({ newPower })
        : refused(
            'mode-unknown',
            `What ${device.category.name} draws in ${measure.toMode} is not known; give a reading in this mode, with its hours.`,
          )
    }
    case 'outlet-switch':
    case 'switchable-strip':
      return part({})
  }
}

const meanHours = ({ loads }: PlanHousehold, { place }: ResolvedDevice): number =>
  loads[place]!.reduce((sum, { hours }) => sum + hours.distribution.mean, 0)

const hoursIn = (
  { loads }: PlanHousehold,
  { place }: ResolvedDevice,
  { fromMode }: AvailableMeasure,
): number =>
  loads[place]!.reduce((sum, { mode, hours }) => (mode === fromMode ? sum + hours.distribution.mean : sum), 0)

/** New devices of one model: as unsure as one, and not independent of each other. */
function drawOfNew({ newDrawW }: AvailableMeasure, quantity: number, stream: number): Power {
  return { term: { coefficient: quantity, factors: [triangular(newDrawW!)] }, stream: stream + 2 }
}

/** The draw in the mode that hours move to: the device's own where it was given, else the catalogue's. */
function powerAfterSetting(
  { toMode }: AvailableMeasure,
  device: ResolvedDevice,
  { resolved }: PlanHousehold,
): Power | null {
  const given = modesOf(device).find(({ mode }) => mode === toMode)
  const isKnown = device.category.modes.some(({ mode }) => mode === toMode)
  if (!given && !isKnown) return null
  return powerOf(modeTerms(given ?? { mode: toMode! }, device, resolved), device)
}

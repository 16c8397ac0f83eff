import { Money } from '../money/money.ts'
import { minorUnit } from '../money/minorUnit.ts'
import { triangular } from '../quantity/triangular.ts'
import type { ResolvedDevice } from '../estimate/resolveHousehold.ts'
import type { AvailableMeasure } from './availableMeasure.ts'
import type { Part } from './part.ts'
import type { PlanHousehold } from './planHousehold.ts'

/** Streams that one measure at one place uses: its persistence, its own draw, a new device's draw. */
export const STREAMS_OF_PART = 3

interface PartFields {
  readonly measure: AvailableMeasure
  readonly devices: readonly ResolvedDevice[]
  readonly outlet: string | null
  readonly count: number
  readonly household: PlanHousehold
  readonly stream: number
  readonly fields: Partial<Part>
}

/** A measure at one place, with its price in minor units and its uncertain figures. */
export function partOf({ measure, devices, outlet, count, household, stream, fields }: PartFields): Part {
  const { ownDrawW, code, place } = measure
  const { currency } = household.resolved.used.tariff
  return {
    id: `${code}.${place + 1}@${outlet ?? devices[0]!.id}`,
    measure,
    places: devices.map((device) => device.place),
    outlet,
    count,
    cost: inMinorUnits(measure.price, currency) * count,
    persistence: { distribution: triangular(measure.persistence), stream, factor: 0 },
    ownDraw:
      ownDrawW.high > 0
        ? { term: { coefficient: count, factors: [triangular(ownDrawW)] }, stream: stream + 1 }
        : null,
    hoursShare: 1,
    newPower: null,
    notes: [],
    ...fields,
  }
}

/** A price as whole minor units of the currency, half-even, such as 1999 for 19.99 EUR. */
export const inMinorUnits = (price: number, currency: string): number =>
  new Money(price)
    .times(10 ** minorUnit(currency))
    .toDecimalPlaces(0, Money.ROUND_HALF_EVEN)
    .toNumber()

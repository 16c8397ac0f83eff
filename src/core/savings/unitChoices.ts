import { type Choice, front, grown } from './bestSet.ts'
import { meanOwnSaving, meanSavingAt, type MeanSaving } from './meanSaving.ts'
import { type Part, worksInside } from './part.ts'
import type { PlanHousehold } from './planHousehold.ts'
import type { PlanGoal } from './savingsRequest.ts'

/** Devices that no measure ties to others: those of one outlet where a strip is offered there, else a single one. */
export interface Unit {
  readonly places: readonly number[]
  readonly strips: readonly Part[]
  /** Measures at single devices. */
  readonly parts: readonly Part[]
}

/** Values are compared in steps of a millionth of a kWh, or of a unit of the currency. */
const STEPS = 1e6

/** What a saving by parts is worth. */
export type Worth = (saving: MeanSaving, parts: readonly Part[]) => number

/** By energy alone; or by money, less the price of each part spread evenly over its life. */
export function worthBy(goal: PlanGoal, minorUnits: number): Worth {
  if (goal === 'most-energy') return ({ kwh }) => Math.round(kwh * STEPS)
  const perYear = ({ cost, measure }: Part) => cost / minorUnits / measure.lifeYears
  return ({ money }, parts) =>
    Math.round((money - parts.reduce((sum, part) => sum + perYear(part), 0)) * STEPS)
}

/**
 * All that can be done in one unit and is worth looking at: with no strip, or with one of those offered. Given the strip,
 * the devices are independent of each other.
 */
export function unitChoices(unit: Unit, household: PlanHousehold, worth: Worth, budget: number) {
  const ways = [null, ...unit.strips].flatMap((strip) => {
    const own = strip ? [strip] : []
    const start: Choice<Part> = {
      cost: strip?.cost ?? 0,
      value: worth(meanOwnSaving(own, household), own),
      parts: own,
    }
    if (start.cost > budget) return []
    return unit.places.reduce(
      (found: readonly Choice<Part>[], place) =>
        grown(found, deviceChoices(place, unit, strip, household, worth), budget),
      [start],
    )
  })
  return front(ways)
}

/** What can be done inside the device, with nothing or one measure that cuts it off; a strip takes the place of the latter. */
function deviceChoices(
  place: number,
  { parts }: Unit,
  strip: Part | null,
  household: PlanHousehold,
  worth: Worth,
): Choice<Part>[] {
  const own = parts.filter(({ places }) => places.includes(place))
  const onStrip = strip?.places.includes(place) ? [strip] : []
  const inside = insideSets(own)
  const outside =
    onStrip.length > 0 ? [[]] : [[], ...own.filter((part) => !worksInside(part)).map((p) => [p])]
  const choices = inside.flatMap((one) =>
    outside.map((other) => {
      const chosen = [...one, ...other]
      const [at, drawn] = [
        meanSavingAt(place, [...chosen, ...onStrip], household),
        meanOwnSaving(chosen, household),
      ]
      const saving = { kwh: at.kwh + drawn.kwh, money: at.money + drawn.money }
      const cost = chosen.reduce((sum, part) => sum + part.cost, 0)
      return { cost, value: worth(saving, chosen), parts: chosen }
    }),
  )
  return front(choices)
}

/** Nothing, a new device, or settings, of which one at most moves hours out of each mode. */
function insideSets(parts: readonly Part[]): Part[][] {
  const settings = parts.filter(({ measure }) => measure.kind === 'setting')
  const sets = settings.reduce<Part[][]>(
    (found, setting) => [
      ...found,
      ...found
        .filter((set) => set.every(({ measure }) => measure.fromMode !== setting.measure.fromMode))
        .map((set) => [...set, setting]),
    ],
    [[]],
  )
  return [...sets, ...parts.filter(({ measure }) => measure.kind === 'replacement').map((part) => [part])]
}

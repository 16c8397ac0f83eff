import { termMean } from '../quantity/term.ts'
import { type Load, meanKwh } from './load.ts'
import { afterParts, type Part } from './part.ts'
import type { PlanHousehold } from './planHousehold.ts'

export const HOURS_PER_WEEK = 168

/** A mean saving: energy in kWh/yr, and money at the mean price of the hours that it falls in, currency/yr. */
export interface MeanSaving {
  readonly kwh: number
  readonly money: number
}

/** What measures draw themselves, as a negative saving. */
export function meanOwnSaving(parts: readonly Part[], { weeksPerYear, perKwh }: PlanHousehold): MeanSaving {
  const kwh = parts.reduce(
    (sum, { ownDraw }) =>
      ownDraw ? sum - (termMean(ownDraw.term) * HOURS_PER_WEEK * weeksPerYear) / 1000 : sum,
    0,
  )
  return { kwh, money: kwh * perKwh }
}

/** What a set of measures saves at one device, without what they draw themselves: its mean before less that after. */
export function meanSavingAt(place: number, parts: readonly Part[], household: PlanHousehold): MeanSaving {
  const before = household.loads[place]!
  const [was, is] = [meanOf(before, household), meanOf(afterParts(place, before, parts), household)]
  return { kwh: was.kwh - is.kwh, money: was.money - is.money }
}

function meanOf(loads: readonly Load[], { weeksPerYear, perKwh }: PlanHousehold): MeanSaving {
  let [kwh, money] = [0, 0]
  for (const load of loads) {
    const energy = meanKwh(load, weeksPerYear)
    kwh += energy
    money += energy * (perKwh + load.hours.surcharge)
  }
  return { kwh, money }
}

/** Mean saving of a set of measures: the household's energy before less that after, less what the measures draw. */
export function meanSaving(parts: readonly Part[], household: PlanHousehold): MeanSaving {
  const places = new Set(parts.flatMap((part) => part.places))
  const savings = [...places].map((place) => meanSavingAt(place, parts, household))
  return [meanOwnSaving(parts, household), ...savings].reduce((sum, one) => ({
    kwh: sum.kwh + one.kwh,
    money: sum.money + one.money,
  }))
}

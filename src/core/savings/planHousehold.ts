import { MODES } from '../catalogue/category.ts'
import { type ModeTerms, modesOf, modeTerms } from '../estimate/estimateMode.ts'
import type { ResolvedDevice, ResolvedHousehold } from '../estimate/resolveHousehold.ts'
import type { StandbyPrice } from '../money/standbyPrice.ts'
import { priceStandby } from '../money/priceStandby.ts'
import { standbyEnergy } from '../money/standbyEnergy.ts'
import { intervalOfSum } from '../quantity/intervalOfSum.ts'
import type { Load, Power } from './load.ts'

/** A household as plans reckon with it: the products that its energy is the sum of, and what a kWh less is worth. */
export interface PlanHousehold {
  readonly resolved: ResolvedHousehold
  readonly devices: readonly ResolvedDevice[]
  /** By device, before any measure. */
  readonly loads: readonly (readonly Load[])[]
  readonly weeksPerYear: number
  readonly price: StandbyPrice
  /** Currency/kWh, at the mean of the household's standby. */
  readonly perKwh: number
  /** Streams below this belong to the modes of devices. */
  readonly firstFreeStream: number
}

export function planHousehold(resolved: ResolvedHousehold): PlanHousehold {
  const { devices, coverage, used } = resolved
  const terms = devices.map((device) => modesOf(device).map((mode) => modeTerms(mode, device, resolved)))
  const modes = terms.flat()
  const interval = intervalOfSum(
    modes.map(({ energy }) => energy),
    coverage,
  )
  const cost = priceStandby(used.tariff, used, standbyEnergy(interval, modes), modes, coverage)
  const surcharges = new Map(
    modes.map((mode, i) => [mode, cost.pricesPerKwh[i]!.minus(cost.price.perKwh).toNumber()]),
  )
  return {
    resolved,
    devices,
    loads: devices.map((device, i) => terms[i]!.map((mode) => loadOf(mode, device, surcharges.get(mode)!))),
    weeksPerYear: used.weeksPerYear,
    price: cost.price,
    perKwh: cost.price.perKwh.toNumber(),
    firstFreeStream: devices.length * MODES.length,
  }
}

/** The streams are those of an estimate that draws: terms of one mode share theirs. */
const streamOf = ({ place }: ResolvedDevice, mode: ModeTerms['mode']) =>
  place * MODES.length + MODES.indexOf(mode)

export const powerOf = ({ power, mode }: ModeTerms, device: ResolvedDevice): Power => ({
  term: power,
  stream: streamOf(device, mode),
})

function loadOf(terms: ModeTerms, device: ResolvedDevice, surcharge: number): Load {
  const { mode, power, hoursPerWeek } = terms
  return {
    mode,
    power: powerOf(terms, device),
    hours: {
      distribution: hoursPerWeek,
      stream: streamOf(device, mode),
      factor: power.factors.length,
      surcharge,
    },
    weights: [],
  }
}

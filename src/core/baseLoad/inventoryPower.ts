import type { Catalogue } from '../catalogue/catalogue.ts'
import type { Interval } from '../estimate/estimate.ts'
import { modesOf, modeTerms } from '../estimate/estimateMode.ts'
import { resolveHousehold } from '../estimate/resolveHousehold.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import type { Household } from '../inventory/household.ts'
import { intervalOfSum } from '../quantity/intervalOfSum.ts'
import { normalQuantile } from '../quantity/normal.ts'
import { scaleTerm, type Term } from '../quantity/term.ts'
import { lognormalOf, SMALLEST_W } from '../quantity/twoPieceLognormal.ts'

/** What an inventory's devices draw together while nobody uses them, and its inverse distribution function. */
export interface InventoryPower {
  readonly powerW: Interval
  readonly devices: number | null
  readonly sampleData: boolean
  /** True where the inventory has something that cools, which cycles and is no standby. */
  readonly hasRefrigeration: boolean
  quantile(p: number): number
}

/**
 * An inventory's devices, each with its average power over the hours counted in its low-power modes. An estimate's
 * total is less: it is an average over the whole year, in which the hours of use count as nothing, while at night
 * hardly anything is in use.
 * @param household checked by checkHousehold
 */
export function powerOfInventory(
  household: Household,
  catalogue: Catalogue,
  settings: EstimateSettings,
  coverage: number,
): InventoryPower {
  const resolved = resolveHousehold(household, catalogue, settings)
  const modes = resolved.devices.map((device) =>
    modesOf(device).map((mode) => modeTerms(mode, device, resolved)),
  )
  const terms = modes.flatMap((own): Term[] => {
    const hours = own.reduce((sum, { hoursPerWeek }) => sum + hoursPerWeek.mean, 0)
    return hours === 0
      ? []
      : own.map(({ power, hoursPerWeek }) => scaleTerm(power, hoursPerWeek.mean / hours))
  })
  return {
    powerW: intervalOfSum(terms, coverage),
    devices: resolved.devices.length,
    sampleData: modes.flat().some(({ sampleData }) => sampleData),
    hasRefrigeration: resolved.devices.some(
      ({ category }) => category.keepPowered?.reason === 'refrigeration',
    ),
    quantile: quantileOf(terms),
  }
}

/** The ends of coverage intervals of these probabilities are points of the distribution; straight lines lie between. */
const COVERAGES = [0.02, 0.2, 0.4, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98, 0.99, 0.998]

/** Interpolates in the standard score, which makes a normal distribution a straight line and a lognormal nearly one. */
function quantileOf(terms: readonly Term[]): (p: number) => number {
  const points = COVERAGES.flatMap((coverage): [number, number][] => {
    const { low, high } = intervalOfSum(terms, coverage)
    const score = normalQuantile((1 + coverage) / 2)
    return [
      [-score, low],
      [score, high],
    ]
  }).sort(([a], [b]) => a - b)
  return (p) => {
    const score = normalQuantile(p)
    const after = points.findIndex(([other]) => other >= score)
    const place = Math.min(points.length - 1, Math.max(1, after < 0 ? points.length - 1 : after))
    const [[z0, w0], [z1, w1]] = [points[place - 1]!, points[place]!]
    return Math.max(0, w0 + ((score - z0) / (z1 - z0)) * (w1 - w0))
  }
}

/**
 * An interval that the caller gives, as a two-piece lognormal: `expected` is taken as the middle of the distribution
 * (the service's own assumption), low and high as the ends of its coverage interval.
 */
export function powerOfInterval(powerW: Interval, coverage: number): InventoryPower {
  const score = normalQuantile((1 + coverage) / 2)
  const median = Math.max(powerW.expected, SMALLEST_W)
  const below = Math.log(median / Math.max(SMALLEST_W, powerW.low)) / score
  const above = Math.log(Math.max(median, powerW.high) / median) / score
  const distribution = lognormalOf(median, Math.max(0, below), above)
  return {
    powerW,
    devices: null,
    sampleData: false,
    hasRefrigeration: false,
    quantile: (p) => distribution.quantile(p),
  }
}

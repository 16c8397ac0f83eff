import { type EmissionFactor } from '../emissions/emissionFactor.ts'
import type { ModeTerms } from '../estimate/estimateMode.ts'
import { type ExactCost, Money, moneyInterval } from '../money/money.ts'
import type { Contrast } from '../quantity/contrast.ts'
import { type Interval, scaleInterval } from '../quantity/interval.ts'
import { intervalOfDifference, intervalsOfDifference } from '../quantity/intervalOfDifference.ts'
import { rectangularSum } from '../quantity/rectangularSum.ts'
import { significant, significantInterval } from '../quantity/significant.ts'
import type { DeviceContrasts } from './deviceContrasts.ts'
import type { PriceOfSaving } from './priceOfSaving.ts'
import type { Saving } from './verification.ts'

/** What savings of all devices are counted with. */
export interface SavingRules {
  readonly coverage: number
  readonly factor: EmissionFactor
  readonly price: PriceOfSaving
  readonly currency: string
  /** Whether no mode has hours of the week of its own, so that one price holds for all. */
  readonly onePrice: boolean
}

/** The coverage that ASHRAE Guideline 14 speaks of, and the share of the saving that it allows. */
const ASHRAE_COVERAGE = 0.68
const ASHRAE_SHARE = 0.5

/**
 * What some devices saved together.
 * @param powerOf what the saving of power is, from that of energy in kWh/yr; W
 */
export function savingOf(
  devices: readonly DeviceContrasts[],
  rules: SavingRules,
  powerOf: (energy: Interval) => Interval,
  isWhole = false,
): Saving {
  const contrasts = devices.flatMap(({ energy }) => energy)
  const [energy, narrow] = intervalsOfDifference(contrasts, [rules.coverage, ASHRAE_COVERAGE]) as [
    Interval,
    Interval,
  ]
  const proportional = costOf(devices, contrasts, energy, rules)
  const cost = isWhole ? rules.price.bent(proportional, energy) : proportional
  const narrower = relativeHalfWidth(narrow)
  return {
    powerW: significantInterval(powerOf(energy)),
    energyKwhPerYear: significantInterval(energy),
    costPerYear: moneyInterval(cost, rules.currency),
    emissionsKgCo2ePerYear: significantInterval(emissionsOf(contrasts, energy, rules)),
    largerThanNoise: isLargerThanNoise(energy),
    fractionalSavingsUncertainty: relativeHalfWidth(energy),
    at68Percent: {
      fractionalSavingsUncertainty: narrower,
      below50Percent: narrower === null ? null : narrower < ASHRAE_SHARE,
    },
  }
}

export const isLargerThanNoise = ({ low, high }: Interval): boolean => low > 0 || high < 0

/** Null where nothing was saved on average. */
function relativeHalfWidth({ expected, low, high }: Interval): number | null {
  return expected === 0 ? null : significant((high - low) / 2 / Math.abs(expected))
}

function emissionsOf(
  contrasts: readonly Contrast[],
  energy: Interval,
  { coverage, factor }: SavingRules,
): Interval {
  const { kgCo2ePerKwh, gridLoss = 0, relativeUncertainty = 0 } = factor
  return scaleInterval(
    timesUncertain(contrasts, energy, coverage, relativeUncertainty),
    kgCo2ePerKwh / (1 - gridLoss),
  )
}

function costOf(
  devices: readonly DeviceContrasts[],
  contrasts: readonly Contrast[],
  energy: Interval,
  { coverage, price: saved, onePrice }: SavingRules,
): ExactCost {
  const { relativeUncertainty, perKwh } = saved.price
  if (onePrice) {
    const kwh = timesUncertain(contrasts, energy, coverage, relativeUncertainty)
    return exactly(kwh, (end) => perKwh.times(end))
  }
  const priced = devices.flatMap((device) =>
    device.priced(({ schedule }: ModeTerms) => saved.ofMode(schedule)),
  )
  const cost = timesUncertain(priced, null, coverage, relativeUncertainty)
  return exactly(cost, (end) => new Money(end))
}

const exactly = ({ expected, low, high }: Interval, cost: (end: number) => Money): ExactCost => ({
  expected: cost(expected),
  low: cost(low),
  high: cost(high),
})

/** A difference times a factor about 1 that both visits share, such as an uncertain price. */
function timesUncertain(
  contrasts: readonly Contrast[],
  known: Interval | null,
  coverage: number,
  relativeUncertainty: number,
): Interval {
  if (relativeUncertainty === 0) return known ?? intervalOfDifference(contrasts, coverage)
  return intervalOfDifference(contrasts, coverage, rectangularSum(1, relativeUncertainty))
}

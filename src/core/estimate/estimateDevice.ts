import { isExact } from '../quantity/distribution.ts'
import { type Interval, intervalOfSum, scaleInterval } from '../quantity/intervalOfSum.ts'
import { significant, significantInterval } from '../quantity/significant.ts'
import { scaleTerm } from '../quantity/term.ts'
import { emissionsOf } from '../emissions/emissionsOf.ts'
import { priceEnergy } from '../money/priceEnergy.ts'
import { deviceFlag } from './confidence.ts'
import type { DeviceEstimate, ModeEstimate, Warning } from './estimate.ts'
import type { ModeTerms } from './estimateMode.ts'
import type { ResolvedDevice, ResolvedHousehold } from './resolveHousehold.ts'

/** Power, energy, cost and emissions of one device, from the terms of its modes. */
export function estimateDevice(
  { id, device, category, quantity }: ResolvedDevice,
  modes: readonly ModeTerms[],
  household: ResolvedHousehold,
  totalKwh: number,
): DeviceEstimate {
  const { coverage, used } = household
  const terms = modes.map(({ energy }) => energy)
  const intervals = modes.map((mode) => modeIntervals(mode, household))
  const energy = intervals.length === 1 ? intervals[0]!.energy : intervalOfSum(terms, coverage)
  const estimates = modes.map((mode, i) => estimateMode(mode, intervals[i]!, household))
  return {
    id,
    label: device.label ?? null,
    category: category.code,
    categoryName: category.name,
    quantity,
    confidence: deviceFlag(
      estimates.map((mode) => ({ ...mode, expectedKwh: mode.energyKwhPerYear.expected })),
    ),
    sampleData: modes.some(({ sampleData }) => sampleData),
    keepPowered: category.keepPowered,
    powerW: significantInterval(averagePower(modes, intervals, energy, household)),
    energyKwhPerYear: significantInterval(energy),
    costPerYear: significantInterval(priceEnergy(energy, terms, coverage, used.tariff)),
    emissionsKgCo2ePerYear: significantInterval(emissionsOf(energy, terms, coverage, used.emissionFactor)),
    shareOfTotal: totalKwh > 0 ? significant(energy.expected / totalKwh) : 0,
    modes: estimates,
    warnings: warningsOf(modes, category.retired, category.name),
  }
}

interface ModeIntervals {
  readonly power: Interval
  readonly energy: Interval
}

/** With exact hours the energy is the power on another scale; only uncertain hours make it a quantity of its own. */
function modeIntervals(
  { power, energy, hoursPerWeek }: ModeTerms,
  { coverage, used }: ResolvedHousehold,
): ModeIntervals {
  const watts = intervalOfSum([power], coverage)
  const kwh = isExact(hoursPerWeek)
    ? scaleInterval(watts, (hoursPerWeek.mean * used.weeksPerYear) / 1000)
    : intervalOfSum([energy], coverage)
  return { power: watts, energy: kwh }
}

function estimateMode(
  mode: ModeTerms,
  { power, energy }: ModeIntervals,
  { coverage, used }: ResolvedHousehold,
): ModeEstimate {
  const { apparentPower } = mode
  return {
    mode: mode.mode,
    hoursPerYear: significant(mode.hoursPerWeek.mean * used.weeksPerYear),
    hoursFrom: mode.hoursFrom,
    confidence: mode.confidence,
    origin: mode.origin,
    powerW: significantInterval(power),
    ...(apparentPower && { apparentPowerVa: significantInterval(intervalOfSum([apparentPower], coverage)) }),
    energyKwhPerYear: significantInterval(energy),
  }
}

const NO_POWER: Interval = { expected: 0, low: 0, high: 0 }

/**
 * The average power over the hours counted, each mode weighted by its expected hours; how uncertain the hours are
 * shows in the energy. With no hours at all there is nothing to average, and it is 0 W.
 */
function averagePower(
  modes: readonly ModeTerms[],
  intervals: readonly ModeIntervals[],
  energy: Interval,
  { coverage, used }: ResolvedHousehold,
): Interval {
  const hours = modes.reduce((sum, { hoursPerWeek }) => sum + hoursPerWeek.mean, 0)
  if (hours === 0) return NO_POWER
  if (modes.length === 1) return intervals[0]!.power
  if (modes.every(({ hoursPerWeek }) => isExact(hoursPerWeek)))
    return scaleInterval(energy, 1000 / (hours * used.weeksPerYear))
  const terms = modes.map(({ power, hoursPerWeek }) => scaleTerm(power, hoursPerWeek.mean / hours))
  return intervalOfSum(terms, coverage)
}

function warningsOf(modes: readonly ModeTerms[], retired: boolean, name: string): Warning[] {
  const all = modes.flatMap(({ warnings }) => warnings)
  if (retired)
    all.push({
      code: 'category-retired',
      message: `${name} is retired from the catalogue; choose a current category.`,
    })
  return all.filter((warning, index) => all.findIndex(({ message }) => message === warning.message) === index)
}

import { intervalOfSum } from '../quantity/intervalOfSum.ts'
import { significant, significantInterval } from '../quantity/significant.ts'
import { scaleTerm, type Term } from '../quantity/term.ts'
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
  const energy = intervalOfSum(terms, coverage)
  const estimates = modes.map((mode) => estimateMode(mode, household))
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
    powerW: significantInterval(intervalOfSum(averagePower(modes), coverage)),
    energyKwhPerYear: significantInterval(energy),
    costPerYear: significantInterval(priceEnergy(energy, terms, coverage, used.tariff)),
    emissionsKgCo2ePerYear: significantInterval(emissionsOf(energy, terms, coverage, used.emissionFactor)),
    shareOfTotal: totalKwh > 0 ? significant(energy.expected / totalKwh) : 0,
    modes: estimates,
    warnings: warningsOf(modes, category.retired, category.name),
  }
}

function estimateMode(mode: ModeTerms, { coverage, used }: ResolvedHousehold): ModeEstimate {
  const { apparentPower } = mode
  return {
    mode: mode.mode,
    hoursPerYear: significant(mode.hoursPerWeek.mean * used.weeksPerYear),
    hoursFrom: mode.hoursFrom,
    confidence: mode.confidence,
    origin: mode.origin,
    powerW: significantInterval(intervalOfSum([mode.power], coverage)),
    ...(apparentPower && { apparentPowerVa: significantInterval(intervalOfSum([apparentPower], coverage)) }),
    energyKwhPerYear: significantInterval(intervalOfSum([mode.energy], coverage)),
  }
}

/**
 * The average power over the hours counted, each mode weighted by its expected hours; how uncertain the hours are
 * shows in the energy. With no hours at all there is nothing to average, and it is 0 W.
 */
function averagePower(modes: readonly ModeTerms[]): Term[] {
  const hours = modes.reduce((sum, { hoursPerWeek }) => sum + hoursPerWeek.mean, 0)
  return hours === 0
    ? []
    : modes.map(({ power, hoursPerWeek }) => scaleTerm(power, hoursPerWeek.mean / hours))
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

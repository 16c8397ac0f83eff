import { emissionsOf } from '../emissions/emissionsOf.ts'
import type { MoneyInterval } from '../money/money.ts'
import type { Interval } from '../quantity/intervalOfSum.ts'
import { significant, significantInterval } from '../quantity/significant.ts'
import { deviceFigures } from './deviceFigures.ts'
import type { DeviceEstimate, Warning } from './estimate.ts'
import type { ModeTerms } from './estimateMode.ts'
import type { ResolvedDevice, ResolvedHousehold } from './resolveHousehold.ts'

/** Power, energy, cost and emissions of one device, from the terms of its modes. */
export function estimateDevice(
  { id, device, category, layer, quantity }: ResolvedDevice,
  modes: readonly ModeTerms[],
  { coverage, used }: ResolvedHousehold,
  totalKwh: number,
  costOf: (energy: Interval, modes: readonly ModeTerms[]) => MoneyInterval,
): DeviceEstimate {
  const figures = deviceFigures(modes, quantity, coverage, used.weeksPerYear)
  const emissions = emissionsOf(
    figures.energy,
    modes.map((mode) => mode.energy),
    coverage,
    used.emissionFactor,
  )
  return {
    id,
    label: device.label ?? null,
    category: category.code,
    categoryName: category.name,
    catalogueLayer: layer,
    quantity,
    confidence: figures.confidence,
    sampleData: figures.sampleData,
    keepPowered: category.keepPowered,
    powerW: figures.powerW,
    energyKwhPerYear: figures.energyKwhPerYear,
    costPerYear: costOf(figures.energy, modes),
    emissionsKgCo2ePerYear: significantInterval(emissions),
    shareOfTotal: totalKwh > 0 ? significant(figures.energy.expected / totalKwh) : 0,
    modes: figures.modes,
    warnings: category.retired ? [...figures.warnings, retired(category.name)] : figures.warnings,
  }
}

const retired = (name: string): Warning => ({
  code: 'category-retired',
  message: `${name} is retired from the catalogue; choose a current category.`,
})

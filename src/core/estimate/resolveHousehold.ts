import type { Catalogue } from '../catalogue/catalogue.ts'
import type { Category } from '../catalogue/category.ts'
import { findCategory } from '../catalogue/findCategory.ts'
import { layerOf } from '../catalogue/layerOf.ts'
import type { Layer } from '../catalogue/overlay.ts'
import { chooseEmissionFactor } from '../emissions/chooseEmissionFactor.ts'
import { DomainError } from '../fault.ts'
import type { Device, Household } from '../inventory/household.ts'
import { deviceId } from '../inventory/deviceId.ts'
import { tariffWarnings } from '../money/tariffWarnings.ts'
import type { Drawing } from '../quantity/term.ts'
import type { ReadingContext } from '../readings/powerModel.ts'
import type { Used, Warning } from './estimate.ts'
import { drawingFor } from './drawingFor.ts'
import { methodUsed } from './methodUsed.ts'
import type { EstimateSettings } from './settings.ts'

export interface ResolvedDevice {
  readonly id: string
  /** Its place in the household, from 0. */
  readonly place: number
  readonly device: Device
  readonly category: Category
  readonly layer: Layer
  readonly quantity: number
}

/** A household with everything filled in that the caller left to the catalogue and the operator. */
export interface ResolvedHousehold {
  readonly devices: readonly ResolvedDevice[]
  readonly coverage: number
  readonly used: Omit<Used, 'standbyPricePerKwh' | 'priceBasis'>
  /** What is to be known of the tariff and the emission factor that were taken. */
  readonly tariffWarnings: readonly Warning[]
  readonly factorWarnings: readonly Warning[]
  readonly tariffIsSample: boolean
  readonly readings: Omit<ReadingContext, 'powerFactor' | 'usual'>
  /** Null where sums are convolved, as they are unless a caller asks for draws. */
  readonly drawing: Drawing | null
}

/**
 * Looks up categories, tariff and emission factor, and fills in defaults.
 * @throws DomainError household-not-checked where checkHousehold would have found a fault
 */
export function resolveHousehold(
  household: Household,
  catalogue: Catalogue,
  settings: EstimateSettings,
): ResolvedHousehold {
  const supply = household.supply ?? settings.supply
  const tariff = tariffOf(household, settings)
  const factor = emissionFactorOf(household, settings)
  const devices = household.devices.map((device, index) => resolveDevice(device, index, catalogue))
  const drawing = drawingFor(household, modesIn(devices))
  return {
    devices,
    coverage: household.coverageProbability ?? settings.coverageProbability,
    tariffIsSample: tariff.sample,
    tariffWarnings: tariffWarnings(tariff.tariff, tariff.retiredCode, household.tariffDate),
    factorWarnings: factor.warnings,
    used: {
      supply,
      tariff: tariff.tariff,
      tariffSource: tariff.source,
      emissionFactor: factor.factor,
      emissionFactorSource: factor.source,
      weeksPerYear: household.weeksPerYear ?? settings.weeksPerYear,
      annualUseKwh: household.annualUseKwh ?? sumOf(household.monthlyUseKwh),
      monthlyUseKwh: household.monthlyUseKwh ?? null,
      methodVersion: methodUsed(drawing),
    },
    readings: {
      supply,
      meters: new Map((household.meters ?? []).map((meter) => [meter.id, meter])),
      presets: settings.meterPresets,
    },
    drawing,
  }
}

function resolveDevice(device: Device, index: number, catalogue: Catalogue): ResolvedDevice {
  const category = found(findCategory(catalogue, device.category))
  return {
    id: deviceId(device, index),
    place: index,
    device,
    category,
    layer: layerOf(catalogue, category.code),
    quantity: device.quantity ?? category.defaultQuantity,
  }
}

const modesIn = (devices: readonly ResolvedDevice[]): number =>
  devices.reduce((sum, { device, category }) => sum + (device.modes ?? category.modes).length, 0)

const REQUEST = 'given in the request'

function tariffOf(household: Household, settings: EstimateSettings) {
  if (household.tariff) return { tariff: household.tariff, source: REQUEST, sample: false, retiredCode: null }
  const code = household.tariffCode ?? settings.defaultTariffCode
  const { tariff, source, sampleData, retired } = found(settings.tariffs.get(code))
  return { tariff, source: `${code}: ${source}`, sample: sampleData, retiredCode: retired ? code : null }
}

function emissionFactorOf(household: Household, settings: EstimateSettings) {
  if (household.emissionFactor) return { factor: household.emissionFactor, source: REQUEST, warnings: [] }
  const code = household.emissionFactorCode ?? settings.defaultEmissionFactorCode
  const { entry, warnings } = household.emissionFactorFor
    ? found(chooseEmissionFactor(settings.emissionFactors, household.emissionFactorFor))
    : { entry: found(settings.emissionFactors.get(code)), warnings: [] }
  const { factor, source, region, year, kind, retired } = entry
  return {
    factor,
    source: `${entry.code} (${region}, ${year}, ${kind}): ${source}`,
    warnings: [...warnings, ...(retired ? [factorRetired(entry.code)] : [])],
  }
}

const factorRetired = (code: string): Warning => ({
  code: 'emission-factor-retired',
  message: `The emission factor ${code} was retired: it is no longer offered. Take another one unless this is an old estimate.`,
})

const sumOf = (monthly: readonly number[] | undefined): number | null =>
  monthly?.reduce((sum, use) => sum + use, 0) ?? null

function found<T>(value: T | null | undefined): T {
  if (value !== null && value !== undefined) return value
  throw new DomainError(
    'household-not-checked',
    'A name in the household was not looked up before it was used.',
  )
}

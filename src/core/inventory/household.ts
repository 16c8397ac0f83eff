import type { Mode, Range } from '../catalogue/category.ts'
import type { EmissionFactor } from '../emissions/emissionFactor.ts'
import type { Tariff } from '../money/tariff.ts'
import type { Meter, Reading } from '../readings/reading.ts'

export interface Supply {
  readonly volts: number
  readonly tolerancePercent: number
  readonly hertz: number
}

export interface DeviceMode {
  readonly mode: Mode
  readonly hoursPerWeek?: number | Range
  readonly reading?: Reading
}

export interface Device {
  readonly id?: string
  readonly label?: string
  /** A category's code, name or alias. */
  readonly category: string
  readonly quantity?: number
  /** Year of manufacture. */
  readonly year?: number
  readonly outlet?: string
  readonly modes?: readonly DeviceMode[]
}

/** One household as a caller sends it: only the devices' categories are required. */
export interface Household {
  readonly supply?: Supply
  readonly tariff?: Tariff
  readonly tariffCode?: string
  readonly emissionFactor?: EmissionFactor
  readonly emissionFactorCode?: string
  readonly annualUseKwh?: number
  readonly weeksPerYear?: number
  readonly coverageProbability?: number
  readonly catalogueRevision?: number
  readonly meters?: readonly Meter[]
  readonly devices: readonly Device[]
}

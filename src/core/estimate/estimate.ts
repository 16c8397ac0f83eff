import type { Category, Mode } from '../catalogue/category.ts'
import type { Layer } from '../catalogue/overlay.ts'
import type { Caution } from '../cautions/caution.ts'
import type { EmissionFactor } from '../emissions/emissionFactor.ts'
import type { Supply } from '../inventory/household.ts'
import type { MoneyInterval } from '../money/money.ts'
import type { Tariff } from '../money/tariff.ts'
import type { Interval } from '../quantity/intervalOfSum.ts'

export type { Interval }

/** How sure a figure's origin is, strongest first (DESIGN section 4). */
export const DEVICE_FLAGS = ['measured', 'partly-measured', 'declared', 'assumed'] as const
export type Flag = (typeof DEVICE_FLAGS)[number]
export const TOTAL_FLAGS = ['measured', 'mixed', 'assumed'] as const

export interface Warning {
  readonly code: string
  readonly message: string
}

/** Where a mode's power came from, so that no figure hides its origin. */
export interface Origin {
  /** `reading`, or `catalogue` for a typical draw. */
  readonly kind: 'reading' | 'catalogue'
  /** The reading's kind, or the draw's provenance kind. */
  readonly detail: string
  /** One sentence for people: the formula and what was assumed. */
  readonly explanation: string
}

export interface ModeEstimate {
  readonly mode: Mode
  /** Expected hours. */
  readonly hoursPerYear: number
  readonly hoursFrom: 'request' | 'catalogue'
  readonly confidence: Flag
  readonly origin: Origin
  readonly powerW: Interval
  /** Only where a current or VA reading was given. */
  readonly apparentPowerVa?: Interval
  readonly energyKwhPerYear: Interval
}

export interface DeviceEstimate {
  readonly id: string
  readonly label: string | null
  readonly category: string
  readonly categoryName: string
  /** Whose figures of the category went in: typical draws, hours and power factors. */
  readonly catalogueLayer: Layer
  readonly quantity: number
  readonly confidence: Flag
  readonly sampleData: boolean
  readonly keepPowered: Category['keepPowered']
  /** Average over the hours counted, all of the quantity together. */
  readonly powerW: Interval
  readonly energyKwhPerYear: Interval
  readonly costPerYear: MoneyInterval
  readonly emissionsKgCo2ePerYear: Interval
  /** Share of the total's expected energy, 0 to 1. */
  readonly shareOfTotal: number
  readonly modes: readonly ModeEstimate[]
  readonly warnings: readonly Warning[]
}

export interface TotalEstimate {
  /** Average over the whole year. */
  readonly powerW: Interval
  readonly energyKwhPerYear: Interval
  readonly costPerYear: MoneyInterval
  readonly emissionsKgCo2ePerYear: Interval
  readonly confidence: (typeof TOTAL_FLAGS)[number]
  readonly confidenceShares: Readonly<Record<Flag, number>>
}

export interface NextReading {
  readonly deviceId: string
  readonly mode: Mode
  /** Share of the total's variance that a wattmeter reading there would remove, 0 to 1. */
  readonly varianceShare: number
}

/** How wide the interval of the total energy would be after some wattmeter readings. */
export interface ExpectedWidth {
  readonly readings: number
  /** Where they would be taken, best first. */
  readonly at: readonly { readonly deviceId: string; readonly mode: Mode }[]
  /** High less low, kWh/yr. */
  readonly widthKwhPerYear: number
  /** That width by the present one. */
  readonly widthShare: number
}

/** What the service filled in for the caller, and from where. */
export interface Used {
  readonly supply: Supply
  readonly tariff: Tariff
  readonly tariffSource: string
  /** Mean cost of a kWh of standby, taxes included, in units of the currency. */
  readonly standbyPricePerKwh: number
  /** How that price came about, in words. */
  readonly priceBasis: string
  readonly emissionFactor: EmissionFactor
  readonly emissionFactorSource: string
  readonly weeksPerYear: number
  readonly annualUseKwh: number | null
  /** The household's use by month, January first. */
  readonly monthlyUseKwh: readonly number[] | null
  readonly methodVersion: string
}

export interface Estimate {
  readonly catalogueRevision: number
  /** Revision of the tariffs and emission factors that were there to choose from. */
  readonly referenceRevision: number
  /** Of the figures of the caller’s organisation that lay over it; 0 where there were none. */
  readonly overlayRevision: number
  readonly coverageProbability: number
  readonly currency: string
  /** True where any figure that went in is invented sample data: a draw, hours, a power factor, a price. */
  readonly sampleData: boolean
  readonly used: Used
  readonly devices: readonly DeviceEstimate[]
  readonly total: TotalEstimate
  readonly nextReadings: readonly NextReading[]
  /** After the best one, two and five of them; only where it was asked for. */
  readonly expectedWidths?: readonly ExpectedWidth[]
  readonly warnings: readonly Warning[]
  readonly cautions: readonly Caution[]
}

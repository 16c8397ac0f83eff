import type { Mode, Range } from '../catalogue/category.ts'
import type { EmissionFactor, EmissionFactorChoice } from '../emissions/emissionFactor.ts'
import type { HoursOfWeek, Tariff } from '../money/tariff.ts'
import type { Meter, Reading } from '../readings/reading.ts'

/** How sums of uncertain figures are worked out. */
export const METHODS = ['convolution', 'monte-carlo'] as const
export type Method = (typeof METHODS)[number]

export interface Supply {
  readonly volts: number
  readonly tolerancePercent: number
  readonly hertz: number
}

export interface DeviceMode {
  readonly mode: Mode
  readonly hoursPerWeek?: number | Range
  /** When in the week the hours fall, for prices that go by time; spread over the whole week where not given. */
  readonly schedule?: readonly HoursOfWeek[]
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
  /** A published factor by region and year, in place of its code. */
  readonly emissionFactorFor?: EmissionFactorChoice
  readonly annualUseKwh?: number
  /** Use of the whole household by month, January first, in place of annualUseKwh. */
  readonly monthlyUseKwh?: readonly number[]
  readonly weeksPerYear?: number
  readonly coverageProbability?: number
  readonly catalogueRevision?: number
  /** Of tariffs and emission factors; the newest where none is named. */
  readonly referenceRevision?: number
  /** Day that the tariff should hold on, YYYY-MM-DD; where it does not, a warning says so. */
  readonly tariffDate?: string
  /** Of the figures of the caller’s organisation; 0 asks for the shared catalogue alone. */
  readonly overlayRevision?: number
  /** How sums of uncertain figures are worked out: convolved unless said otherwise. */
  readonly method?: Method
  /** Of the Monte Carlo. */
  readonly draws?: number
  readonly seed?: number
  /** Whether to work out how wide the total's interval would be after the next readings; it takes a while, so not unasked. */
  readonly expectedWidths?: boolean
  readonly meters?: readonly Meter[]
  readonly devices: readonly Device[]
}

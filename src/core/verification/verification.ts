import type { Mode } from '../catalogue/category.ts'
import type { Caution } from '../cautions/caution.ts'
import type { SourceMark } from '../emissions/emissionFactor.ts'
import type { Flag, Used, Warning } from '../estimate/estimate.ts'
import type { Device, Household } from '../inventory/household.ts'
import type { MoneyInterval } from '../money/money.ts'
import type { Interval } from '../quantity/intervalOfSum.ts'
import type { Meter } from '../readings/reading.ts'

/** What was found at one visit, wherever it was kept. Devices of one id are one device; so are meters. */
export interface Visit {
  readonly meters?: readonly Meter[]
  readonly devices: readonly (Device & { readonly id: string })[]
}

/** A measure that was meant to be carried out, with what it was expected to save. */
export interface PlannedMeasure {
  readonly name: string
  readonly deviceIds: readonly string[]
  readonly expectedKwhPerYear: number
}

/** Two visits to one household. What is not of a visit is stated once, so that both are counted alike. */
export interface VerificationRequest extends Omit<
  Household,
  'devices' | 'meters' | 'method' | 'draws' | 'seed'
> {
  readonly before: Visit
  readonly after: Visit
  readonly plan?: readonly PlannedMeasure[]
}

export const DEVICE_STATUSES = ['unchanged', 'changed', 'removed', 'added'] as const
export const CHANGE_CODES = [
  'device-removed',
  'device-added',
  'category-changed',
  'year-changed',
  'year-known',
  'quantity-changed',
  'mode-added',
  'mode-removed',
  'hours-changed',
  'schedule-changed',
  'now-measured',
  'no-longer-measured',
  'better-known',
  'reading-changed',
] as const
export const IPMVP_OPTIONS = ['A', 'B'] as const
export const MEASURE_STATUSES = ['carried-out', 'partly', 'not-carried-out', 'cannot-be-told'] as const
export type MeasureStatus = (typeof MEASURE_STATUSES)[number]

export interface Change {
  readonly code: (typeof CHANGE_CODES)[number]
  readonly mode: Mode | null
  readonly message: string
}

/** Before less after: above zero is saved. */
export interface Saving {
  readonly powerW: Interval
  readonly energyKwhPerYear: Interval
  readonly costPerYear: MoneyInterval
  readonly emissionsKgCo2ePerYear: Interval
  /** Whether the interval of the energy leaves out zero. */
  readonly largerThanNoise: boolean
  /** Half of the width of the energy's interval over its mean, without sign; null where nothing was saved. */
  readonly fractionalSavingsUncertainty: number | null
  /** The same at a coverage of 0.68, and whether it is below 50 %, as ASHRAE Guideline 14 asks. */
  readonly at68Percent: {
    readonly fractionalSavingsUncertainty: number | null
    readonly below50Percent: boolean | null
  }
}

/** What a saving of energy consists of, kWh/yr: the two add up to it. */
export interface SavingParts {
  /** Change of power at the hours before. */
  readonly powerEffect: Interval
  /** Change of hours at the power after. */
  readonly hoursEffect: Interval
}

export interface DeviceAtVisit {
  readonly quantity: number
  readonly confidence: Flag
  readonly powerW: Interval
  readonly energyKwhPerYear: Interval
}

export interface DeviceVerification {
  readonly id: string
  readonly label: string | null
  readonly category: string
  readonly categoryName: string
  readonly status: (typeof DEVICE_STATUSES)[number]
  readonly changes: readonly Change[]
  /** As an estimate of the visit gives it; null where the device was not there. */
  readonly before: DeviceAtVisit | null
  readonly after: DeviceAtVisit | null
  readonly saving: Saving
  /** Null for a device that is in one visit only. */
  readonly parts: SavingParts | null
  readonly ipmvp: { readonly option: (typeof IPMVP_OPTIONS)[number] | null; readonly reason: string }
  readonly warnings: readonly Warning[]
}

/** A figure that one visit knew better: it stands for both, and what that moves is no saving. */
export interface BetterKnown {
  readonly deviceId: string
  readonly mode: Mode
  readonly from: Flag
  readonly to: Flag
  /** Whose figure was replaced. */
  readonly rebasedVisit: 'before' | 'after'
  /** kWh/yr of that visit as its own estimate has it, and as it counts here. */
  readonly estimatedKwhPerYear: Interval
  readonly rebasedKwhPerYear: Interval
  /** What this takes out of the difference of the two estimates, kWh/yr. */
  readonly differenceKwhPerYear: Interval
}

export interface MeasureProgress extends PlannedMeasure {
  readonly status: MeasureStatus
  readonly reason: string
  readonly savedKwhPerYear: Interval
  /** Saved over expected. */
  readonly realisation: Interval
}

export interface PlanProgress {
  readonly measures: readonly MeasureProgress[]
  readonly expectedKwhPerYear: number
  readonly savedKwhPerYear: Interval
  /** Saved over expected. */
  readonly realisation: Interval
  /** Share of the expected energy that belongs to measures that were carried out, 0 to 1. */
  readonly carriedOutShare: number
  /** Of devices that no measure names. */
  readonly savedOutsidePlanKwhPerYear: Interval
}

export interface VerificationSource {
  readonly document: string
  readonly year: number
  readonly says: string
  /** How well it is confirmed; see the limits and emission factors. */
  readonly mark: SourceMark
}

export interface TotalVerification {
  /** kWh/yr, as estimates of the two visits give them. */
  readonly beforeKwhPerYear: Interval
  readonly afterKwhPerYear: Interval
  readonly all: Saving
  /** Devices that are in both visits. */
  readonly kept: Saving
  readonly keptParts: SavingParts
  readonly removed: Saving
  readonly added: Saving
}

export interface Verification {
  readonly catalogueRevision: number
  /** Of the figures of the caller's organisation that lay over it; 0 where there were none. */
  readonly overlayRevision: number
  /** Revision of the tariffs and emission factors that were there to choose from. */
  readonly referenceRevision: number
  readonly coverageProbability: number
  readonly currency: string
  readonly sampleData: boolean
  readonly used: Used
  readonly devices: readonly DeviceVerification[]
  readonly total: TotalVerification
  readonly betterKnown: { readonly items: readonly BetterKnown[]; readonly differenceKwhPerYear: Interval }
  readonly plan: PlanProgress | null
  readonly sources: readonly VerificationSource[]
  readonly warnings: readonly Warning[]
  readonly cautions: readonly Caution[]
}

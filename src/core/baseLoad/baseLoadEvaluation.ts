import type { Caution } from '../cautions/caution.ts'
import type { Interval, Warning } from '../estimate/estimate.ts'
import type { Household } from '../inventory/household.ts'
import type { DateSpan } from './daysAway.ts'
import type { Choosable, Estimator } from './estimators.ts'
import type { FORMS } from './intervalData.ts'

/** What a caller may say beside the data. */
export interface BaseLoadOptions {
  readonly estimator?: Choosable | undefined
  readonly nightFromHour?: number | undefined
  readonly nightToHour?: number | undefined
  readonly coverageProbability?: number | undefined
  readonly daysAway?: readonly DateSpan[] | undefined
  /** True where there is generation behind the meter, whether or not the data shows it. */
  readonly generation?: boolean | undefined
  readonly inventory?: Household | undefined
  /** In place of an inventory: what its devices draw in their low-power modes, W, at the coverage probability. */
  readonly inventoryPowerW?: Interval | undefined
}

export interface EstimatorResult {
  readonly estimator: Estimator
  /** What it is, in words. */
  readonly definition: string
  readonly powerW: number | null
  /** Ends of the coverage interval; null for a single moment, and where there is no figure. */
  readonly low: number | null
  readonly high: number | null
  readonly days: number
  /** Why there is no figure. */
  readonly reason: string | null
}

export interface ChosenEstimate {
  readonly estimator: Choosable
  readonly powerW: Interval
  readonly energyKwhPerYear: Interval
  /** Of the mean power of all readings, 0 to 1; null with generation, where that mean is no use. */
  readonly shareOfUse: number | null
  readonly days: number
  readonly effectiveDays: number
  readonly degreesOfFreedom: number
  readonly explanation: string
  readonly formula: string
  readonly source: string
}

export interface DataSummary {
  readonly form: (typeof FORMS)[number]
  readonly timeZone: string
  readonly from: string
  readonly to: string
  readonly intervalSeconds: number
  readonly readings: number
  readonly days: number
  readonly completeDays: number
  /** Days whose clock was changed: local dates and their length, h. */
  readonly clockChanges: readonly { readonly date: string; readonly hours: number }[]
  readonly coveredShare: number
  readonly gaps: number
  readonly longestGapHours: number
  readonly duplicates: number
  readonly conflicts: number
  readonly overlaps: number
  readonly joined: number
  readonly estimated: number
  readonly energyKwh: number
  readonly meanW: number
  readonly leastReadingW: number
}

export interface TimeSpan {
  readonly from: string
  readonly to: string
}

/** What the rest could be. `isStandby` is false for what runs by itself: switching off standby does not lower it. */
export interface RestCandidate {
  readonly code: string
  readonly isStandby: boolean
  readonly message: string
  readonly source: string
}

export interface Explained {
  readonly from: 'inventory' | 'request'
  readonly devices: number | null
  readonly sampleData: boolean
  readonly powerW: Interval
  /** Inventory over base load; above 1 where the inventory is more. `expected` is the ratio of the two means. */
  readonly explainedShare: Interval
  /** Base load less inventory; below 0 where the inventory is more. */
  readonly restW: Interval
  readonly correlation: string
  readonly couldBe: readonly RestCandidate[]
}

export interface BaseLoadEvaluation {
  readonly methodVersion: string
  readonly catalogueRevision: number
  /** Of the figures of the caller’s organisation that lay over it; 0 where there were none. */
  readonly overlayRevision: number
  readonly coverageProbability: number
  readonly night: { readonly fromHour: number; readonly toHour: number }
  readonly data: DataSummary
  readonly estimators: readonly EstimatorResult[]
  readonly chosen: ChosenEstimate
  readonly daysAway: {
    readonly named: readonly DateSpan[]
    readonly suspected: readonly DateSpan[]
    /** Mean power of the days that were named; null where there are none. */
    readonly meanW: number | null
  }
  readonly outages: readonly TimeSpan[]
  readonly generation: boolean
  readonly inventory: Explained | null
  readonly warnings: readonly Warning[]
  readonly cautions: readonly Caution[]
}

import type { KeepPoweredReason, Range } from '../catalogue/category.ts'
import type { Caution } from '../cautions/caution.ts'
import type { TotalEstimate, Warning } from '../estimate/estimate.ts'
import type { MoneyInterval } from '../money/money.ts'
import type { Interval } from '../quantity/intervalOfSum.ts'
import type { MeasureKind } from './measure.ts'
import type { Refusal } from './offered.ts'
import type { SavingsFactor } from './savingsFactor.ts'
import type { PlanGoal } from './savingsRequest.ts'

/** Years; null where it is never paid back: at that end of the interval nothing is saved. */
export interface Payback {
  /** The price over the mean saving a year. */
  readonly expected: number | null
  readonly low: number | null
  readonly high: number | null
}

/** What a measure, or a set of them, saves and costs. */
export interface SavingFigures {
  /** In the currency of the tariff, for all pieces. */
  readonly price: number
  /** The same as decimal text. */
  readonly priceAmount: string
  readonly savedKwhPerYear: Interval
  readonly savedMoneyPerYear: MoneyInterval
  readonly savedEmissionsKgCo2ePerYear: Interval
  /** Without interest or a change of prices. */
  readonly simplePaybackYears: Payback
  /** That the money saved over the life is at least the price, 0 to 1. */
  readonly probabilityOfPayback: number
  readonly lifeYears: number
}

/** A measure at one place, as if it were the only one. */
export interface OfferedMeasure {
  readonly id: string
  readonly measureCode: string
  readonly name: string
  readonly kind: MeasureKind
  readonly deviceIds: readonly string[]
  readonly outlet: string | null
  /** How many pieces, or devices. */
  readonly count: number
  readonly needsHabit: boolean
  readonly persistence: Range
  /** Whether it is in the chosen set. */
  readonly chosen: boolean
  readonly sampleData: boolean
  readonly source: string
  readonly notes: readonly Warning[]
  readonly figures: SavingFigures
}

/** A device that no measure may touch. */
export interface KeptPowered {
  readonly deviceId: string
  readonly label: string | null
  readonly category: string
  readonly categoryName: string
  readonly reason: KeepPoweredReason
  readonly note: string
}

/** The chosen set; its figures are the household's before less those after, and no sum of single measures. */
export interface ChosenSet {
  readonly measureIds: readonly string[]
  readonly figures: SavingFigures
}

export interface SavingsPlan {
  readonly catalogueRevision: number
  /** Of the figures of the caller's organisation that lay over it; 0 where there were none. */
  readonly overlayRevision: number
  /** Revision of the tariffs and emission factors that were there to choose from. */
  readonly referenceRevision: number
  readonly coverageProbability: number
  readonly currency: string
  readonly sampleData: boolean
  readonly methodVersion: string
  readonly goal: PlanGoal
  /** Null where there is no bound. */
  readonly budget: number | null
  readonly standbyPricePerKwh: number
  readonly priceBasis: string
  readonly savingsFactor: SavingsFactor
  /** What the household's devices come to before anything is done. */
  readonly total: TotalEstimate
  readonly measures: readonly OfferedMeasure[]
  /** Null where nothing is worth doing. */
  readonly plan: ChosenSet | null
  readonly notOffered: readonly Refusal[]
  readonly keptPowered: readonly KeptPowered[]
  readonly warnings: readonly Warning[]
  readonly cautions: readonly Caution[]
}

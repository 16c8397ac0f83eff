import type { Mode, Range } from '../catalogue/category.ts'
import type { EmissionFactor } from '../emissions/emissionFactor.ts'
import type { Household } from '../inventory/household.ts'

/** What "the best set" means. */
export const PLAN_GOALS = ['most-energy', 'most-money-after-cost'] as const
export type PlanGoal = (typeof PLAN_GOALS)[number]

/** A measure that is available, with what differs from the service's own figures; prices in the tariff's currency. */
export interface MeasureChoice {
  readonly code: string
  readonly price?: number
  readonly lifeYears?: number
  readonly persistence?: number | Range
  readonly ownDrawW?: number | Range
  readonly ratedLoadW?: number
  readonly ratedLoadA?: number
  readonly outlets?: number
  readonly hoursOffPerWeek?: number
  readonly fromMode?: Mode
  readonly toMode?: Mode
  readonly newDrawW?: number | Range
  /** Ids of the devices that it is for; all that it suits where none is named. */
  readonly devices?: readonly string[]
}

/** What a plan has to know of a device besides its inventory. */
export interface PlanDevice {
  readonly deviceId: string
  /** What its label says that it takes at most while it is used, W; of one of its quantity. */
  readonly ratedWatts: number
}

export interface PlanOptions {
  /** What may be spent, in the tariff's currency; no bound where it is not given. */
  readonly budget?: number
  /** `most-energy` where there is a budget, `most-money-after-cost` where there is none. */
  readonly goal?: PlanGoal
  /** All that the service has where none is named. */
  readonly measures?: readonly MeasureChoice[]
  readonly devices?: readonly PlanDevice[]
  /** Outlets that have a power strip already. */
  readonly outletsWithStrip?: readonly string[]
  /** Emissions of the stations that would generate less. */
  readonly marginalFactor?: EmissionFactor
  readonly marginalFactorCode?: string
}

/** One household, and what it could do. */
export interface SavingsRequest extends Household {
  readonly plan?: PlanOptions
}

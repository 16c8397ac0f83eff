import type { Caution } from '../cautions/caution.ts'
import type { Warning } from '../estimate/estimate.ts'

/** A part of the population that was sampled on its own. */
export interface SurveyStratum {
  readonly name: string
  /** Homes of the whole stratum. Optional where clusters were drawn. */
  readonly homes?: number
  /** Clusters of the whole stratum, such as blocks of flats, where clusters were drawn and each home in them surveyed. */
  readonly clusters?: number
  /** The sample in summary, in place of single homes. */
  readonly sample?: StratumSummary
}

/** n, mean and variance (divisor n - 1) of a stratum's sampled homes. */
export interface StratumSummary {
  readonly homes: number
  readonly mean: number
  readonly variance: number
  /** Of the auxiliary quantity, and its covariance with the value; for a ratio estimate. */
  readonly auxiliary?: { readonly mean: number; readonly variance: number; readonly covariance: number }
}

export interface SurveyedHome {
  /** May be left out where there is only one stratum. */
  readonly stratum?: string
  readonly cluster?: string
  readonly value: number
  readonly auxiliary?: number
  readonly domain?: string
}

export const STANDARD_ERROR_FORMS = ['with-mean-factor', 'without-mean-factor'] as const
export type StandardErrorForm = (typeof STANDARD_ERROR_FORMS)[number]

export interface Survey {
  readonly method: 'survey'
  /** Unit of the values, such as kWh/yr; repeated in the answer. */
  readonly unit?: string
  readonly strata: readonly SurveyStratum[]
  readonly homes?: readonly SurveyedHome[]
  readonly ratio?: { readonly auxiliaryTotal: number; readonly standardErrorForm?: StandardErrorForm }
  readonly finitePopulationCorrection?: boolean
  readonly coverageProbability?: number
}

/** An estimate with its standard error and t-interval; the interval is not cut off at zero. */
export interface SurveyFigure {
  readonly expected: number
  readonly standardError: number
  readonly low: number
  readonly high: number
}

export interface SurveyEstimate {
  readonly method: 'survey'
  readonly methodVersion: string
  readonly unit: string | null
  readonly coverageProbability: number
  readonly sampledHomes: number
  /** Sampled units less strata: homes, or clusters where clusters were drawn. */
  readonly degreesOfFreedom: number
  /** Quantile of Student's t that the intervals were made with. */
  readonly tQuantile: number
  readonly finitePopulationCorrection: boolean
  /** Homes of the population; estimated where clusters were drawn and strata do not give them. */
  readonly populationHomes: number
  readonly total: SurveyFigure
  readonly mean: SurveyFigure
  /** Variance of the total over that of a simple random sample of as many homes; null where that would be zero. */
  readonly designEffect: number | null
  readonly strata: readonly {
    readonly name: string
    readonly sampledHomes: number
    /** Clusters where clusters were drawn, else homes. */
    readonly sampledUnits: number
    readonly populationUnits: number
    readonly total: SurveyFigure
  }[]
  readonly domains: readonly {
    readonly name: string
    readonly sampledHomes: number
    readonly homes: SurveyFigure
    readonly total: SurveyFigure
    readonly mean: SurveyFigure
  }[]
  readonly ratio: {
    readonly ratio: number
    readonly auxiliaryTotal: number
    readonly standardErrorForm: StandardErrorForm
    readonly total: SurveyFigure
  } | null
  readonly assumptions: readonly string[]
  readonly warnings: readonly Warning[]
  readonly cautions: readonly Caution[]
}

/** Emissions of a grid's electricity: kg CO2e for each kWh generated, and the share of it lost on the way. */
export interface EmissionFactor {
  readonly kgCo2ePerKwh: number
  /** Share of generation lost in transmission and distribution, 0 to below 1. */
  readonly gridLoss?: number
  /** Half-width of the factor's uncertainty relative to it, 0 to 1; rectangular; shared by all devices. */
  readonly relativeUncertainty?: number
}

/**
 * What a published factor counts. `CO2e` is said where the source does not list the gases, and life-cycle factors
 * add what building and fuelling the power stations emits. Factors that count different things can't be compared.
 */
export const GASES_COUNTED = ['CO2', 'CO2+CH4+N2O', 'CO2e', 'CO2e life-cycle'] as const
export type GasesCounted = (typeof GASES_COUNTED)[number]

/**
 * How well a published figure is confirmed: V read in the source itself, V2 read in a public transcript of it,
 * C computed from confirmed figures, M from memory.
 */
export const SOURCE_MARKS = ['V', 'V2', 'C', 'M'] as const
export type SourceMark = (typeof SOURCE_MARKS)[number]

/**
 * `average`: all generation over the kWh generated, for what a household uses. `marginal`: of the stations that would
 * generate less, for what a household saves; published as non-baseload or as avoided emissions.
 */
export const FACTOR_KINDS = ['average', 'marginal'] as const
export type FactorKind = (typeof FACTOR_KINDS)[number]

/** A published factor that the operator keeps under a code. */
export interface NamedEmissionFactor {
  readonly code: string
  /** Out of lists and of the choice by region, but still found by its code. */
  readonly retired: boolean
  /** The grid, the same in all years and for both kinds, such as us-camx. */
  readonly regionCode: string
  /** The grid in words. */
  readonly region: string
  readonly kind: FactorKind
  readonly year: number
  readonly factor: EmissionFactor
  readonly gases: GasesCounted
  readonly source: string
  readonly mark: SourceMark
}

/** A published factor asked for by what it is of. */
export interface EmissionFactorChoice {
  readonly region: string
  /** The newest where none is named. */
  readonly year?: number
  /** `average` where none is named. */
  readonly kind?: FactorKind
}

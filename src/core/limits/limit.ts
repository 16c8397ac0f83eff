import type { Mode } from '../catalogue/category.ts'
import type { SourceMark } from '../emissions/emissionFactor.ts'

export const JURISDICTIONS = ['EU', 'US', 'international'] as const
export type Jurisdiction = (typeof JURISDICTIONS)[number]

/** What a limit is for: what may be sold, what an office may buy, or what a mark on the label promises. */
export const LIMIT_PURPOSES = ['placing-on-the-market', 'purchasing', 'efficiency-mark'] as const
export type LimitPurpose = (typeof LIMIT_PURPOSES)[number]

/**
 * What a device does in the mode, where limits differ by it. A simple indicator light is no status display
 * ((EU) 2023/826, Article 2(6)).
 */
export const LIMIT_CONDITIONS = [
  'any',
  'reactivation-only',
  'information-or-status-display',
  'high-network-availability',
  'other-networked',
] as const
export type LimitCondition = (typeof LIMIT_CONDITIONS)[number]

/** Kinds of external power supplies. */
export const SUPPLY_TYPES = ['ac-dc', 'ac-ac', 'low-voltage', 'multiple-output'] as const
export type SupplyType = (typeof SUPPLY_TYPES)[number]

/** One published limit on the power of one mode. */
export interface Limit {
  readonly code: string
  readonly jurisdiction: Jurisdiction
  readonly purpose: LimitPurpose
  readonly regulation: string
  readonly annex: string | null
  readonly point: string | null
  /** First and last day on which a device placed on the market falls under it, YYYY-MM-DD; null is open. */
  readonly appliesFrom: string | null
  readonly appliesUntil: string | null
  readonly mode: Mode
  readonly condition: LimitCondition
  /** Only for no-load. */
  readonly supplyType: SupplyType | null
  /** Rated output of an external supply that the limit is for: above the one, up to the other, W. */
  readonly outputAboveW: number | null
  readonly outputUpToW: number | null
  readonly limitW: number
  /**
   * How far above the limit a measured value may be when an authority tests, in W and in percent of the limit: the larger
   * where both are given. Null where no tolerance is published, or known here.
   */
  readonly toleranceW: number | null
  readonly tolerancePercent: number | null
  readonly toleranceSource: string | null
  readonly toleranceMark: SourceMark | null
  readonly source: string
  readonly mark: SourceMark
}

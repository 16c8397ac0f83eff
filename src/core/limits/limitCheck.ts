import type { Mode } from '../catalogue/category.ts'
import type { Caution } from '../cautions/caution.ts'
import type { Flag, Warning } from '../estimate/estimate.ts'
import type { Supply } from '../inventory/household.ts'
import type { Interval } from '../quantity/intervalOfSum.ts'
import type { Meter, Reading } from '../readings/reading.ts'
import type { Jurisdiction, Limit, SupplyType } from './limit.ts'

/** A reading, or a power with its interval, to be held against the published limit of its mode and year. */
export interface LimitQuestion {
  readonly reading?: Reading
  readonly meters?: readonly Meter[]
  readonly supply?: Supply
  /** For the power factor of a reading of current or apparent power. */
  readonly category?: string
  /** In place of a reading: W, at coverageProbability. */
  readonly powerW?: Interval
  /** One limit by its code; else those that fit what follows. */
  readonly limitCode?: string
  readonly jurisdiction?: Jurisdiction
  readonly mode?: Mode
  /** YYYY, YYYY-MM or YYYY-MM-DD: when the device was placed on the market, in practice bought new or made. */
  readonly placedOnMarket?: string
  /** In standby: whether it shows information or status, more than an indicator light. */
  readonly showsStatus?: boolean
  /** In networked standby: whether its main job is to pass on network traffic (high network availability). */
  readonly highNetworkAvailability?: boolean
  /** Of an external power supply. */
  readonly supplyType?: SupplyType
  readonly ratedOutputW?: number
  readonly coverageProbability?: number
  readonly catalogueRevision?: number
  /** Of the figures of the caller’s organisation; 0 asks for the shared catalogue alone. */
  readonly overlayRevision?: number
}

export const LIMIT_VERDICTS = ['below', 'above', 'cannot-be-told'] as const
export type LimitVerdict = (typeof LIMIT_VERDICTS)[number]

export const LIMIT_REASONS = [
  'wholly-below',
  'wholly-above',
  'interval-crosses-limit',
  'within-verification-tolerance',
  'limits-disagree',
  'no-limit-applies',
] as const

export interface LimitReason {
  readonly code: (typeof LIMIT_REASONS)[number]
  readonly message: string
}

export interface ComparedLimit {
  readonly limit: Limit
  /** The limit and the tolerance that an authority's test allows, W. */
  readonly aboveFromW: number
  readonly verdict: LimitVerdict
  readonly reason: LimitReason
}

export interface LimitAnswer {
  readonly methodVersion: string
  readonly catalogueRevision: number
  /** Of the figures of the caller’s organisation that lay over it; 0 where there were none. */
  readonly overlayRevision: number
  readonly coverageProbability: number
  readonly verdict: LimitVerdict
  readonly reason: LimitReason
  /** That this is no compliance test, and why. */
  readonly notice: string
  readonly powerW: Interval
  /** How sure the origin of the power is; null where the request gave it. */
  readonly confidence: Flag | null
  readonly compared: readonly ComparedLimit[]
  readonly warnings: readonly Warning[]
  readonly cautions: readonly Caution[]
}

import type { DeviceEstimate, Estimate } from '../estimate/estimate.ts'
import type { Household } from '../inventory/household.ts'
import type { Label } from './labelOf.ts'
import type { StayOn } from './stayOn.ts'

/** A device of the answers, by its id in household and estimate. */
interface Named extends Label {
  readonly deviceId: string
  readonly category: string
}

/** A device that much goes into and that may be switched off. */
export interface WorthDoing
  extends Named, Pick<DeviceEstimate, 'confidence' | 'energyKwhPerYear' | 'costPerYear' | 'shareOfTotal'> {
  readonly advice: string
}

export type MustStayOn = Named & StayOn

/** What comes of the answers to a quiz. */
export interface QuizResult {
  readonly language: string
  readonly catalogueRevision: number
  /** Of the figures of the caller's organisation that lay over it; 0 where there were none. */
  readonly overlayRevision: number
  readonly sampleData: boolean
  readonly sampleDataNotice: string | null
  /** What the answers were turned into; an estimate of it gives `estimate`. */
  readonly household: Household
  readonly estimate: Estimate
  /** Three at most, largest energy first. */
  readonly worthDoing: readonly WorthDoing[]
  readonly mustStayOn: readonly MustStayOn[]
  /** What to do before any of it is switched off. */
  readonly beforeSwitchingOff: string
}

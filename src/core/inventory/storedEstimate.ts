import type { EstimateBasis } from '../estimate/basis.ts'
import type { Estimate } from '../estimate/estimate.ts'
import type { Household } from './household.ts'

/** An estimate of an inventory as it was on one visit, with all that it was made from. Nothing of it ever changes. */
export interface StoredEstimate {
  readonly id: string
  /** The inventory's id. */
  readonly inventory: string
  /** Date of the visit. */
  readonly visit: string
  /** RFC 3339. */
  readonly madeAt: string
  readonly catalogueRevision: number
  readonly methodVersion: string
  readonly household: Household
  readonly basis: EstimateBasis
  readonly result: Estimate
}

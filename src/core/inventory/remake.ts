import type { Catalogue } from '../catalogue/catalogue.ts'
import { settingsOfBasis } from '../estimate/basis.ts'
import type { Estimate } from '../estimate/estimate.ts'
import { estimate } from '../estimate/estimateHousehold.ts'
import type { StoredEstimate } from './storedEstimate.ts'

/**
 * A stored estimate made again from what is stored: the same to the last byte, as long as the method is the same.
 * @param catalogue at the revision of the stored estimate
 */
export const remake = ({ household, basis }: StoredEstimate, catalogue: Catalogue): Estimate =>
  estimate(household, catalogue, settingsOfBasis(basis))

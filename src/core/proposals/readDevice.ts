import { realPower } from './realPower.ts'
import type { StoredReading } from './storedReading.ts'

/** What is kept in mind of a stored reading: a series of samples is long, its power is one figure. */
export interface ReadDevice extends Omit<StoredReading, 'reading' | 'category'> {
  /** Null where a series of samples is not stable. */
  readonly watts: number | null
}

export const readDevice = ({ reading, ...where }: StoredReading): ReadDevice => ({
  organisation: where.organisation,
  inventory: where.inventory,
  visit: where.visit,
  place: where.place,
  device: where.device,
  mode: where.mode,
  year: where.year,
  quantity: where.quantity,
  watts: realPower(reading),
})

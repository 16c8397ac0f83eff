import type { Range } from '../../../src/core/catalogue/category.ts'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import type { Reading } from '../../../src/core/readings/reading.ts'
import type { VerificationRequest, Visit } from '../../../src/core/verification/verification.ts'
import { verifySavings } from '../../../src/core/verification/verifySavings.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'

export const catalogue = catalogueOf(1, testCategories)
export const WATTMETER = { id: 'wattmeter', percentOfReading: 2, counts: 5, resolution: 0.01 }
const CLAMP = { id: 'clamp', percentOfReading: 3, counts: 5, resolution: 0.001 }

export const watts = (value: number, meterId = 'wattmeter'): Reading => ({
  kind: 'power',
  watts: value,
  meterId,
})
export const amperes = (value: number, loops = 10): Reading => ({
  kind: 'current',
  amperes: value,
  loops,
  meterId: 'clamp',
})
export const label = (value: number): Reading => ({ kind: 'declared', watts: value })

/** A device in standby; assumed where it has no reading. */
export const device = (
  id: string,
  hoursPerWeek: number | Range,
  reading?: Reading,
  more: Partial<Visit['devices'][number]> = {},
): Visit['devices'][number] => ({
  id,
  category: 'television',
  modes: [{ mode: 'standby', hoursPerWeek, ...(reading && { reading }) }],
  ...more,
})

export const visit = (...devices: Visit['devices']): Visit => ({ meters: [WATTMETER, CLAMP], devices })

export const verify = (before: Visit, after: Visit, more: Partial<VerificationRequest> = {}) =>
  verifySavings({ emissionFactor: { kgCo2ePerKwh: 0.25 }, ...more, before, after }, catalogue, testSettings)

import { readConfig, settingsOf } from '../../../src/config.ts'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import type { Estimate } from '../../../src/core/estimate/estimate.ts'
import { estimate } from '../../../src/core/estimate/estimateHousehold.ts'
import type { Household } from '../../../src/core/inventory/household.ts'
import type { Reading } from '../../../src/core/readings/reading.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { categoryWith, modeWith } from '../../core/catalogue/sampleCategory.ts'

/** The settings that the service is shipped with, its published emission factors among them. */
export const settings = settingsOf(readConfig({}), await readSeed())
/** One category whose own figures never count: every device here has a reading. */
export const catalogue = catalogueOf(1, [
  categoryWith({ code: 'device', name: 'Device', modes: [modeWith(), modeWith({ mode: 'idle' })] }),
])

/** Devices that were read, on all week, each as one reading. */
export function estimateOf(
  readings: readonly Reading[],
  household: Omit<Household, 'devices'> = {},
): Estimate {
  const devices = readings.map((reading) => ({
    category: 'device',
    modes: [{ mode: 'standby' as const, hoursPerWeek: 168, reading }],
  }))
  return estimate({ ...household, devices }, catalogue, settings)
}

/** A mean power that runs all year, W. */
export const drawing = (watts: number): Reading => ({ kind: 'power', watts })

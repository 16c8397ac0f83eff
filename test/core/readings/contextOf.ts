import type { ReadingContext } from '../../../src/core/readings/powerModel.ts'
import { meterPresets } from '../../helpers/meterPresets.ts'

/** What a reading is read against where a test does not say otherwise: a known category that draws 1 to 5 W. */
export const contextOf = (changes: Partial<ReadingContext> = {}): ReadingContext => ({
  supply: { volts: 230, tolerancePercent: 6, hertz: 50 },
  meters: new Map(),
  presets: meterPresets,
  powerFactor: { low: 0.3, typical: 0.45, high: 0.65 },
  usual: { name: 'Test device', low: 1, high: 5 },
  ...changes,
})

export const EXACT = { percentOfReading: 0, counts: 0, resolution: 0 }
export const codesOf = (warnings: readonly { readonly code: string }[]) => warnings.map(({ code }) => code)

import type { MeterAccuracy } from './reading.ts'

/**
 * What a plug-in wattmeter of the kind that households borrow can do: +-(2 % of reading + 2 counts of 0.1 W).
 * Common practice, no source. Used to say what a reading would be worth before it is taken.
 */
export const ASSUMED_WATTMETER: MeterAccuracy = { percentOfReading: 2, counts: 2, resolution: 0.1 }

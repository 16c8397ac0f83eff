/** A meter's stated limits of error: +-(percentOfReading % + counts x resolution), resolution in the reading's unit. */
export interface MeterAccuracy {
  readonly percentOfReading: number
  readonly counts: number
  readonly resolution: number
}

/** The units that meters show; resolution and counts are in them. */
export const READING_UNITS = ['W', 'A', 'VA', 'Wh'] as const
export type ReadingUnit = (typeof READING_UNITS)[number]

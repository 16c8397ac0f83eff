/**
 * Interval readings as columns, so that millions of them stay small: one element of each column is one reading.
 * `startSeconds` counts from 1970-01-01T00:00:00Z without leap seconds, as ESPI and POSIX do.
 */
export interface Readings {
  readonly startSeconds: Float64Array
  readonly durationSeconds: Float64Array
  /** Mean power over the interval, W; negative where more was fed in than drawn. */
  readonly watts: Float64Array
  /** Where the reading stands: a line of the file, or the number of the value in the request, from 1. */
  readonly places: Uint32Array
}

/** Readings of more than this are refused: two years of values for every 15 seconds, or 114 of one every 15 minutes. */
export const MOST_READINGS = 4_000_000

export const countOf = (readings: Readings) => readings.startSeconds.length

/** The readings at the given indices, in their order. */
export function pick(readings: Readings, indices: Uint32Array | readonly number[]): Readings {
  const of = (column: Float64Array) => Float64Array.from(indices, (index) => column[index]!)
  return {
    startSeconds: of(readings.startSeconds),
    durationSeconds: of(readings.durationSeconds),
    watts: of(readings.watts),
    places: Uint32Array.from(indices, (index) => readings.places[index]!),
  }
}

/** The readings for which `keep` holds. */
export function only(readings: Readings, keep: (index: number) => boolean): Readings {
  const indices = new Uint32Array(countOf(readings))
  let kept = 0
  for (let i = 0; i < indices.length; i++) if (keep(i)) indices[kept++] = i
  return kept === indices.length ? readings : pick(readings, indices.subarray(0, kept))
}

import { countOf, type Readings } from './readings.ts'

/** A run of readings of exactly zero. */
export interface ZeroRun {
  readonly from: number
  readonly to: number
  /** Index of its first reading, and of the first one after it. */
  readonly first: number
  readonly end: number
}

/** A run shorter than an hour may be a coarse meter between two steps. */
const LEAST_SECONDS = 3600
/** Where more of the readings than this are zero, they are how this meter counts, and no outages. */
export const MOST_ZEROS = 0.05

/**
 * Runs of zeros for an hour or longer. A home that draws nothing at all is rare: the supply or the meter failed, the
 * main switch was off, or the meter's steps are coarser than the draw. Both bounds are the service's own.
 */
export function zeroRuns({ startSeconds, durationSeconds, watts }: Readings): ZeroRun[] {
  const runs: ZeroRun[] = []
  for (let i = 0; i < watts.length; i++) {
    if (watts[i] !== 0) continue
    const first = i
    let to = startSeconds[i]! + durationSeconds[i]!
    while (i + 1 < watts.length && watts[i + 1] === 0 && startSeconds[i + 1] === to)
      to = startSeconds[++i]! + durationSeconds[i]!
    const from = startSeconds[first]!
    if (to - from >= LEAST_SECONDS) runs.push({ from, to, first, end: i + 1 })
  }
  return runs
}

export function shareOfZeros(readings: Readings): number {
  let zeros = 0
  for (const power of readings.watts) if (power === 0) zeros++
  return zeros / countOf(readings)
}

import { countOf, only, pick, type Readings } from './readings.ts'

/** A stretch without readings between two readings. */
export interface Gap {
  readonly from: number
  readonly to: number
}

/** Two readings of the same interval that do not agree: both are left out, since nothing tells which is right. */
export interface Conflict {
  readonly place: number
  readonly otherPlace: number
  readonly watts: number
  readonly otherWatts: number
}

export interface TidyReadings {
  /** In order of time; none overlaps another. */
  readonly readings: Readings
  /** Readings that repeated another in all respects; each interval is counted once. */
  readonly duplicates: number
  readonly conflicts: readonly Conflict[]
  /** Places of readings that overlapped others in part; left out. */
  readonly overlaps: readonly number[]
}

/**
 * Puts readings in order of time and makes every moment count at most once. Of a long reading and the shorter ones
 * that share its start the shorter ones stay, since they say more.
 */
export function tidyReadings(raw: Readings): TidyReadings {
  const inOrder = sortedByTime(raw)
  const { drop, duplicates, conflicts } = findRepeats(inOrder)
  const once = only(inOrder, (i) => drop[i] === 0)
  const overlaps: number[] = []
  let end = -Infinity
  const readings = only(once, (i) => {
    const from = once.startSeconds[i]!
    const overlapping = from < end
    if (overlapping) overlaps.push(once.places[i]!)
    else end = from + once.durationSeconds[i]!
    return !overlapping
  })
  return { readings, duplicates, conflicts, overlaps }
}

function sortedByTime(raw: Readings): Readings {
  const { startSeconds, durationSeconds, places } = raw
  const compare = (a: number, b: number) =>
    startSeconds[a]! - startSeconds[b]! ||
    durationSeconds[a]! - durationSeconds[b]! ||
    places[a]! - places[b]!
  let inOrder = true
  for (let i = 1; i < countOf(raw) && inOrder; i++) inOrder = compare(i - 1, i) <= 0
  if (inOrder) return raw
  return pick(raw, Uint32Array.from(startSeconds, (_, index) => index).sort(compare))
}

/** Values that went through different units may differ in their last bits. */
const same = (a: number, b: number) => Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a))

function findRepeats({ startSeconds, durationSeconds, watts, places }: Readings) {
  const drop = new Uint8Array(startSeconds.length)
  const conflicts: Conflict[] = []
  let duplicates = 0
  for (let first = 0, i = 1; i < drop.length; i++) {
    if (startSeconds[i] !== startSeconds[first] || durationSeconds[i] !== durationSeconds[first]) {
      first = i
      continue
    }
    drop[i] = 1
    if (same(watts[i]!, watts[first]!)) duplicates++
    else {
      drop[first] = 1
      const [place, otherPlace] = [places[first]!, places[i]!]
      conflicts.push({ place, otherPlace, watts: watts[first]!, otherWatts: watts[i]! })
    }
  }
  return { drop, duplicates, conflicts }
}

/** Stretches without readings, at least a second long. */
export function gapsOf({ startSeconds, durationSeconds }: Readings): Gap[] {
  const gaps: Gap[] = []
  for (let i = 1; i < startSeconds.length; i++) {
    const from = startSeconds[i - 1]! + durationSeconds[i - 1]!
    if (startSeconds[i]! - from >= 1) gaps.push({ from, to: startSeconds[i]! })
  }
  return gaps
}

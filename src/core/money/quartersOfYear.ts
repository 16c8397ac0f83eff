/** Quarters of an hour in a day on the clock. */
export const QUARTERS = 96

const MINUTE_MS = 60_000
const QUARTER_MS = 15 * MINUTE_MS
const DAY_MS = QUARTERS * QUARTER_MS

/**
 * How often each quarter of an hour of each day shows on a place's clock in a year: once, but for the days on which
 * the clock is changed, where an hour is left out or comes twice. Counted by going through the instants of the year;
 * all of them together are 8,760 h, or 8,784 h in a leap year.
 *
 * @param timeZone IANA name
 * @returns counts by day of the year x 96 + quarter of the day
 */
export function quartersOfYear(timeZone: string, year: number): Uint8Array {
  const key = `${year} ${timeZone}`
  const counts = kept.get(key) ?? count(timeZone, year)
  // The oldest goes, so that a caller who tries all zones does not fill the memory.
  if (kept.size >= MOST_KEPT) for (const oldest of [...kept.keys()].slice(0, 1)) kept.delete(oldest)
  kept.set(key, counts)
  return counts
}

/** Going through a year takes some milliseconds, and most tariffs of a service are of one place. */
const kept = new Map<string, Uint8Array>()
const MOST_KEPT = 16

function count(timeZone: string, year: number): Uint8Array {
  const offsetAt = offsetsOf(timeZone)
  const start = Date.UTC(year, 0, 1)
  const days = (Date.UTC(year + 1, 0, 1) - start) / DAY_MS
  const counts = new Uint8Array(days * QUARTERS)
  // The zone's year begins up to 14 h before or after that of UTC.
  for (let day = -1; day <= days; day++) {
    const from = start + day * DAY_MS
    const first = offsetAt(from)
    const changes = offsetAt(from + DAY_MS) !== first
    for (let quarter = 0; quarter < QUARTERS; quarter++) {
      const instant = from + quarter * QUARTER_MS
      const offset = changes ? offsetAt(instant) : first
      const place = Math.floor((instant + offset - start) / QUARTER_MS)
      if (place >= 0 && place < counts.length) counts[place]! += 1
    }
  }
  return counts
}

/** How far the clock is ahead of UTC at an instant, ms. */
function offsetsOf(timeZone: string): (instant: number) => number {
  const clock = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    calendar: 'gregory',
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
  })
  return (instant) => {
    const shown: Partial<Record<Intl.DateTimeFormatPartTypes, number>> = {}
    for (const { type, value } of clock.formatToParts(instant)) shown[type] = Number(value)
    const { year = 0, month = 1, day = 1, hour = 0, minute = 0 } = shown
    return Date.UTC(year, month - 1, day, hour, minute) - instant
  }
}

/** Whether the name is one of a time zone. */
export function isTimeZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== ''
  } catch (error) {
    if (error instanceof RangeError) return false
    throw error
  }
}

/** A timestamp as it is written. `offset` is null for local time, `zulu` says that it is written as Z. */
export interface Timestamp {
  /** The wall clock's time, s since 1970 on the wall. */
  readonly local: number
  /** Local time less UTC, s. */
  readonly offset: number | null
  readonly zulu: boolean
}

const TIMESTAMP = /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d)(?::(\d\d)(?:\.0+)?)?(Z|[+-]\d\d:?\d\d)?$/

/**
 * Reads YYYY-MM-DD hh:mm[:ss], with T or a space between date and time, and Z, an offset or nothing behind it
 * (RFC 3339; without an offset as spreadsheets write it). Other orders of day and month can't be told apart.
 * @returns null where it is none, or no date of the calendar
 */
export function readTimestamp(text: string): Timestamp | null {
  const match = TIMESTAMP.exec(text)
  if (!match) return null
  const [, year, month, day, hour, minute, second = '0', zone] = match
  const [h, m, s] = [Number(hour), Number(minute), Number(second)]
  const date = daysOf(Number(year), Number(month), Number(day))
  // 24:00 is the end of the day, as some meters write it.
  if (date === null || h > 24 || m > 59 || s > 59 || (h === 24 && m + s > 0)) return null
  const local = date * 86_400 + h * 3600 + m * 60 + s
  const zulu = zone === 'Z'
  return { local, offset: zone === undefined ? null : zulu ? 0 : offsetOf(zone), zulu }
}

/** Days since 1970; null for one that the calendar does not have, such as 30 February. */
export function daysOf(year: number, month: number, day: number): number | null {
  const time = new Date(Date.UTC(year, month - 1, day))
  if (time.getUTCMonth() !== month - 1 || time.getUTCDate() !== day || year < 1970) return null
  return time.getTime() / 86_400_000
}

function offsetOf(zone: string): number {
  const sign = zone.startsWith('-') ? -1 : 1
  return sign * (Number(zone.slice(1, 3)) * 3600 + Number(zone.slice(-2)) * 60)
}

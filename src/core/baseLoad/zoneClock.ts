import { clockOfYears, DAY_SECONDS, type LocalClock, type OffsetStep } from './localClock.ts'

/** True for an IANA name that this service's time zone data has, such as Europe/Berlin. */
export function isTimeZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat('en-US', { timeZone: name }).resolvedOptions().timeZone !== ''
  } catch (error) {
    if (error instanceof RangeError) return false
    throw error
  }
}

/**
 * The clock of a time zone, by the IANA data that comes with the runtime.
 * @param zone a name for which isTimeZone holds
 */
export function clockOfZone(zone: string): LocalClock {
  const format = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    timeZoneName: 'longOffset',
    hour: '2-digit',
  })
  const offsetAt = (instant: number) => readOffset(format.format(instant * 1000))
  return clockOfYears(zone, (year) =>
    changesBetween(offsetAt, Date.UTC(year, 0, 1) / 1000, Date.UTC(year + 1, 0, 1) / 1000),
  )
}

const OFFSET = /GMT([+-])(\d\d):(\d\d)(?::(\d\d))?/
function readOffset(text: string): number {
  // Some runtimes write UTC as GMT alone: then what is put behind it is found.
  const [, sign, hours, minutes, seconds = 0] = OFFSET.exec(`${text}+00:00`)!
  return (sign === '-' ? -1 : 1) * (Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds))
}

/** Every change of the offset, to the second: days are compared first, then the day that brings a change is halved. */
function changesBetween(offsetAt: (instant: number) => number, from: number, to: number): OffsetStep[] {
  const steps = [{ from, offset: offsetAt(from) }]
  for (let day = from; day < to; day += DAY_SECONDS) {
    const offset = offsetAt(day + DAY_SECONDS)
    if (offset === steps.at(-1)!.offset) continue
    let [low, high] = [day, day + DAY_SECONDS]
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2)
      if (offsetAt(middle) === offset) high = middle
      else low = middle
    }
    steps.push({ from: high, offset })
  }
  return steps
}

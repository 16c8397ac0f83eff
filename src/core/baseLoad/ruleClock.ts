import { clockOfYears, DAY_SECONDS, type LocalClock, type OffsetStep } from './localClock.ts'

/** ESPI's LocalTimeParameters: offsets in s, rules as eight hexadecimal digits. */
export interface LocalTimeParameters {
  readonly tzOffset: number
  readonly dstOffset: number
  readonly dstStartRule: string
  readonly dstEndRule: string
}

/** When daylight saving starts or ends in each year; null for the rule FFFFFFFF, which switches it off. */
export interface DaylightRule {
  readonly month: number
  /** 0 on the day of the month; 1 on the weekday on or after it; 2 to 6 the first to fifth weekday; 7 the last one. */
  readonly operator: number
  readonly dayOfMonth: number
  /** Monday is 1. */
  readonly weekday: number
  readonly secondOfDay: number
}

/**
 * Reads a daylight saving rule: bits 0-11 seconds, 12-16 hours, 17-19 weekday, 20-24 day of the month, 25-27 operator,
 * 28-31 month.
 * Source: DstRuleType of the IEEE 2030.5 schema, which ESPI shares (V2, read in public transcriptions). 360E2000 is the
 * second Sunday in March, 2:00, B40E2000 the first Sunday in November, 2:00, as North America has it.
 * @returns undefined where the text is no rule
 */
export function readDaylightRule(text: string): DaylightRule | null | undefined {
  if (!/^[0-9a-f]{1,8}$/i.test(text)) return undefined
  const bits = Number.parseInt(text, 16)
  if (bits === 0xff_ff_ff_ff) return null
  const rule = {
    month: (bits >>> 28) & 0xf,
    operator: (bits >>> 25) & 0x7,
    dayOfMonth: (bits >>> 20) & 0x1f,
    weekday: (bits >>> 17) & 0x7,
    secondOfDay: ((bits >>> 12) & 0x1f) * 3600 + (bits & 0xf_ff),
  }
  const needsWeekday = rule.operator > 0
  const needsDay = rule.operator <= 1
  const sound = rule.month >= 1 && rule.month <= 12 && rule.secondOfDay < DAY_SECONDS
  return sound && (!needsWeekday || rule.weekday > 0) && (!needsDay || rule.dayOfMonth > 0) ? rule : undefined
}

/** The local time at which a rule holds in a year, s since 1970 on the wall. */
export function localTimeOf(rule: DaylightRule, year: number): number {
  const first = Date.UTC(year, rule.month - 1, 1) / 1000 / DAY_SECONDS
  const last = Date.UTC(year, rule.month, 1) / 1000 / DAY_SECONDS - 1
  return dayIn(rule, first, last) * DAY_SECONDS + rule.secondOfDay
}

function dayIn({ operator, dayOfMonth, weekday }: DaylightRule, first: number, last: number): number {
  if (operator === 0) return first + dayOfMonth - 1
  if (operator === 1) return onOrAfter(first + dayOfMonth - 1, weekday)
  if (operator === 7) return onOrAfter(last - 6, weekday)
  return onOrAfter(first, weekday) + (operator - 2) * 7
}

/** 1970-01-01 was a Thursday, so a day's weekday is (day + 3) mod 7 with Monday as 0. */
const onOrAfter = (day: number, weekday: number) => day + ((((weekday - 1 - (day + 3)) % 7) + 7) % 7)

/**
 * The clock of ESPI's local time parameters. A rule's time is on the clock that runs until then, so daylight saving
 * ends at a time that already has its offset.
 */
export function clockOfRules(
  { tzOffset, dstOffset }: Pick<LocalTimeParameters, 'tzOffset' | 'dstOffset'>,
  start: DaylightRule | null,
  end: DaylightRule | null,
): LocalClock {
  const name = `local time parameters (UTC${tzOffset < 0 ? '' : '+'}${tzOffset} s)`
  if (!start || !end || dstOffset === 0) return { name, offsetAt: () => tzOffset }
  const changesIn = (year: number): OffsetStep[] => [
    { from: localTimeOf(start, year) - tzOffset, offset: tzOffset + dstOffset },
    { from: localTimeOf(end, year) - tzOffset - dstOffset, offset: tzOffset },
  ]
  return clockOfYears(name, (year) =>
    [...changesIn(year - 1), ...changesIn(year)].sort((a, b) => a.from - b.from),
  )
}

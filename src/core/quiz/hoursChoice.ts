import type { Range } from '../catalogue/category.ts'

/** How long a device is plugged in while nobody uses it, as somebody would say it. */
export const HOURS_CHOICES = [
  'usual',
  'nearly-always',
  'between-uses',
  'evenings',
  'few-hours-a-day',
  'rarely',
] as const
export type HoursChoice = (typeof HOURS_CHOICES)[number]

/** What the answer is where none was given: the catalogue's hours. */
export const USUAL = 'usual'

/**
 * Hours a week (h) that a choice stands for: plugged in and not in use, in all modes together. A plain answer is a
 * range, and the interval of the estimate shows that.
 *
 * Common practice, no source; worked out from hours a day times seven: hardly ever in use is 0 to 2.5 h of use a day
 * (typically 1), between uses 2 to 8 (4.5), evenings 3 to 6 h plugged in (4.5), a few hours 1 to 4 (2.5);
 * rarely is up to 7 h in the whole week (2).
 */
export const HOURS_OF_CHOICE: Readonly<Record<Exclude<HoursChoice, typeof USUAL>, Range>> = {
  'nearly-always': { low: 150.5, typical: 161, high: 168 },
  'between-uses': { low: 112, typical: 136.5, high: 154 },
  evenings: { low: 21, typical: 31.5, high: 42 },
  'few-hours-a-day': { low: 7, typical: 17.5, high: 28 },
  rarely: { low: 0, typical: 2, high: 7 },
}

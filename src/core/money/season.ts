import type { Season } from './tariff.ts'

/** Whether a day of the year, MM-DD, lies in a season; the text's order is that of the calendar. */
export const inSeason = (monthDay: string, { from, to }: Season): boolean =>
  from <= to ? from <= monthDay && monthDay <= to : from <= monthDay || monthDay <= to

import type { Tariff } from './tariff.ts'

/** Whether a tariff holds on a day, YYYY-MM-DD; both ends of its validity are in it. */
export const tariffHolds = (
  { validFrom, validTo }: Pick<Tariff, 'validFrom' | 'validTo'>,
  day: string,
): boolean => (validFrom ?? day) <= day && day <= (validTo ?? day)

import type { Category, CategoryMode } from '../catalogue/category.ts'

const HOURS_IN_A_WEEK = 168

/** The modes that a kind of device spends hours in while nobody uses it, longest first. */
export function askedModes({ modes }: Category): readonly CategoryMode[] {
  const counted = modes.filter(({ defaultHoursPerWeek }) => defaultHoursPerWeek > 0)
  return [...(counted.length > 0 ? counted : modes)].sort(
    (one, other) => other.defaultHoursPerWeek - one.defaultHoursPerWeek,
  )
}

/**
 * Whether hours are not asked: the device must stay powered, or is by its nature never in use and never off (the
 * catalogue's hours fill the week).
 */
export function isAlwaysOn(category: Category): boolean {
  const hours = category.modes.reduce((sum, { defaultHoursPerWeek }) => sum + defaultHoursPerWeek, 0)
  return category.keepPowered !== null || hours >= HOURS_IN_A_WEEK
}

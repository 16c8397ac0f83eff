import type { Jurisdiction, Limit, LimitPurpose } from '../core/limits/limit.ts'
import type { Mode } from '../core/catalogue/category.ts'
import type { Deps } from './deps.ts'
import { pageByCode } from './pageByCode.ts'

export interface LimitFilter {
  readonly jurisdiction?: Jurisdiction | undefined
  readonly purpose?: LimitPurpose | undefined
  readonly mode?: Mode | undefined
  /** Only limits that apply to a device placed on the market on this day, YYYY-MM-DD. */
  readonly placedOnMarket?: string | undefined
}

/** The published limits that the service knows, in the order of their codes. */
export function listLimits(
  { settings }: Deps,
  { jurisdiction, purpose, mode, placedOnMarket: day }: LimitFilter,
  page: Parameters<typeof pageByCode>[1],
): { readonly items: readonly Limit[]; readonly next: string | null } {
  const fits = (limit: Limit) =>
    (jurisdiction === undefined || limit.jurisdiction === jurisdiction) &&
    (purpose === undefined || limit.purpose === purpose) &&
    (mode === undefined || limit.mode === mode) &&
    (day === undefined || ((limit.appliesFrom ?? day) <= day && day <= (limit.appliesUntil ?? day)))
  return pageByCode([...settings.limits.values()].filter(fits), page)
}

import type { NamedTariff } from '../core/money/tariff.ts'
import type { Deps } from './deps.ts'
import { pageByCode } from './pageByCode.ts'

export interface TariffFilter {
  readonly currency?: string | undefined
  /** Only tariffs that hold on this day, YYYY-MM-DD. */
  readonly validOn?: string | undefined
}

/** The tariffs that the operator keeps, in the order of their codes. */
export function listTariffs(
  { settings }: Deps,
  { currency, validOn }: TariffFilter,
  page: Parameters<typeof pageByCode>[1],
): { readonly items: readonly NamedTariff[]; readonly next: string | null } {
  const fits = ({ tariff }: NamedTariff) =>
    (currency === undefined || tariff.currency === currency) &&
    (validOn === undefined ||
      ((tariff.validFrom ?? validOn) <= validOn && validOn <= (tariff.validTo ?? validOn)))
  return pageByCode([...settings.tariffs.values()].filter(fits), page)
}

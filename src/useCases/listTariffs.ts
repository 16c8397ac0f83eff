import type { NamedTariff } from '../core/money/tariff.ts'
import { tariffHolds } from '../core/money/tariffHolds.ts'
import type { Deps } from './deps.ts'
import { pageByCode } from './pageByCode.ts'
import { referenceAt } from './referenceAt.ts'

export interface TariffFilter {
  readonly currency?: string | undefined
  /** Only tariffs that hold on this day, YYYY-MM-DD. */
  readonly validOn?: string | undefined
  readonly includeRetired?: boolean | undefined
  /** The newest where it is not given. */
  readonly referenceRevision?: number | undefined
}

export interface TariffPage {
  readonly items: readonly NamedTariff[]
  readonly next: string | null
  readonly referenceRevision: number
  /** By code: the revision that gave the tariff the state shown. */
  readonly changedIn: ReadonlyMap<string, number>
}

/** The tariffs that the operator keeps, in the order of their codes. @throws DomainError unknown-reference-revision */
export async function listTariffs(
  deps: Deps,
  { currency, validOn, includeRetired = false, referenceRevision }: TariffFilter,
  page: Parameters<typeof pageByCode>[1],
): Promise<TariffPage> {
  const { revision, entries, changedIn } = await referenceAt(deps, referenceRevision)
  const fits = ({ tariff, retired }: NamedTariff) =>
    (includeRetired || !retired) &&
    (currency === undefined || tariff.currency === currency) &&
    (validOn === undefined || tariffHolds(tariff, validOn))
  const items = [...entries.tariff.values()].filter(fits)
  return { ...pageByCode(items, page), referenceRevision: revision, changedIn: changedIn.tariff }
}

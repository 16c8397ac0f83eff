import type { FactorKind, NamedEmissionFactor } from '../core/emissions/emissionFactor.ts'
import { factorsOfYear } from '../core/emissions/factorsOfYear.ts'
import type { Deps } from './deps.ts'
import { pageByCode } from './pageByCode.ts'
import { referenceAt } from './referenceAt.ts'

export interface EmissionFactorFilter {
  readonly region?: string | undefined
  /** Of each region the factors of this year, or of the nearest. */
  readonly year?: number | undefined
  readonly kind?: FactorKind | undefined
  readonly includeRetired?: boolean | undefined
  /** The newest where it is not given. */
  readonly referenceRevision?: number | undefined
}

export interface EmissionFactorPage {
  readonly items: readonly NamedEmissionFactor[]
  readonly next: string | null
  readonly warnings: readonly { readonly code: string; readonly message: string }[]
  readonly referenceRevision: number
  /** By code: the revision that gave the factor the state shown. */
  readonly changedIn: ReadonlyMap<string, number>
}

/** The published emission factors, in the order of their codes. @throws DomainError unknown-reference-revision */
export async function listEmissionFactors(
  deps: Deps,
  { region, year, kind, includeRetired = false, referenceRevision }: EmissionFactorFilter,
  page: Parameters<typeof pageByCode>[1],
): Promise<EmissionFactorPage> {
  const { revision, entries, changedIn } = await referenceAt(deps, referenceRevision)
  const known = [...entries['emission-factor'].values()].filter(
    (factor) =>
      (includeRetired || !factor.retired) &&
      (region === undefined || factor.regionCode === region) &&
      (kind === undefined || factor.kind === kind),
  )
  const { factors, warnings } =
    year === undefined ? { factors: known, warnings: [] } : factorsOfYear(known, year)
  return {
    ...pageByCode(factors, page),
    warnings,
    referenceRevision: revision,
    changedIn: changedIn['emission-factor'],
  }
}

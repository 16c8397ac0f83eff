import { factorsOfYear } from '../core/emissions/factorsOfYear.ts'
import type { FactorKind, NamedEmissionFactor } from '../core/emissions/emissionFactor.ts'
import type { Deps } from './deps.ts'
import { pageByCode } from './pageByCode.ts'

export interface EmissionFactorFilter {
  readonly region?: string | undefined
  /** Of each region the factors of this year, or of the nearest. */
  readonly year?: number | undefined
  readonly kind?: FactorKind | undefined
}

export interface EmissionFactorPage {
  readonly items: readonly NamedEmissionFactor[]
  readonly next: string | null
  readonly warnings: readonly { readonly code: string; readonly message: string }[]
}

/** The published emission factors that the service has, in the order of their codes. */
export function listEmissionFactors(
  { settings }: Deps,
  { region, year, kind }: EmissionFactorFilter,
  page: Parameters<typeof pageByCode>[1],
): EmissionFactorPage {
  const known = [...settings.emissionFactors.values()].filter(
    (factor) =>
      (region === undefined || factor.regionCode === region) && (kind === undefined || factor.kind === kind),
  )
  const { factors, warnings } =
    year === undefined ? { factors: known, warnings: [] } : factorsOfYear(known, year)
  return { ...pageByCode(factors, page), warnings }
}

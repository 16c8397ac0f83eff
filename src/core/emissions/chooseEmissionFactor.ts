import type { EmissionFactorChoice, NamedEmissionFactor } from './emissionFactor.ts'
import { nearestYear, yearMissing } from './factorsOfYear.ts'

export interface ChosenEmissionFactor {
  readonly entry: NamedEmissionFactor
  readonly warnings: readonly { readonly code: string; readonly message: string }[]
}

/**
 * The factor of a region for a year: that of the year itself, else of the nearest year that has one, with a warning; of
 * two that are as near, the newer. Average and marginal factors never stand in for each other. Where a year has several,
 * one that counts all greenhouse gases comes before one that counts CO2 alone, which is said. Retired ones are not chosen.
 * @returns null where the region has no factor of that kind
 */
export function chooseEmissionFactor(
  factors: ReadonlyMap<string, NamedEmissionFactor>,
  { region, year, kind = 'average' }: EmissionFactorChoice,
): ChosenEmissionFactor | null {
  const known = [...factors.values()].filter(
    (one) => !one.retired && one.regionCode === region && one.kind === kind,
  )
  const nearest = nearestYear(known, year ?? Math.max(...known.map((one) => one.year)))
  const ofYear = known.filter((one) => one.year === nearest)
  const entry = ofYear.find((one) => !isPartial(one)) ?? ofYear[0]
  if (!entry) return null
  return {
    entry,
    warnings: [
      ...(year !== undefined && entry.year !== year ? [yearMissing(entry, year)] : []),
      ...(isPartial(entry) ? [countsCo2Alone(entry)] : []),
    ],
  }
}

const isPartial = ({ gases }: NamedEmissionFactor) => gases === 'CO2'

const countsCo2Alone = ({ kind, regionCode, year }: NamedEmissionFactor) => ({
  code: 'factor-co2-alone',
  message: `The ${kind} emission factor of ${regionCode} for ${year} counts CO2 alone; other greenhouse gases come on top.`,
})

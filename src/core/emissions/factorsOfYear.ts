import type { NamedEmissionFactor } from './emissionFactor.ts'

/**
 * Of every region, and of average and marginal factors each, those of a year; where the year has none, those of the
 * nearest year that has, which the warnings name. Of two years that are as near, the newer.
 */
export function factorsOfYear(
  known: readonly NamedEmissionFactor[],
  year: number,
): {
  readonly factors: readonly NamedEmissionFactor[]
  readonly warnings: readonly { readonly code: string; readonly message: string }[]
} {
  const groups = new Map<string, NamedEmissionFactor[]>()
  for (const factor of known) {
    const key = `${factor.kind} ${factor.regionCode}`
    groups.set(key, [...(groups.get(key) ?? []), factor])
  }
  const chosen = [...groups.values()].map((group) => {
    const nearest = nearestYear(group, year)
    return group.filter((factor) => factor.year === nearest)
  })
  return {
    factors: chosen.flat(),
    warnings: chosen.flatMap(([first]) => (first && first.year !== year ? [yearMissing(first, year)] : [])),
  }
}

/** The nearest year that any of the factors is of, the newer of two. */
export const nearestYear = (factors: readonly NamedEmissionFactor[], year: number): number =>
  factors.reduce((best, factor) => {
    const [here, there] = [Math.abs(factor.year - year), Math.abs(best - year)]
    return here < there || (here === there && factor.year > best) ? factor.year : best
  }, factors[0]?.year ?? year)

export const yearMissing = ({ kind, regionCode, year: used }: NamedEmissionFactor, year: number) => ({
  code: 'factor-year-missing',
  message: `There is no ${kind} emission factor of ${regionCode} for ${year}; that of ${used}, the nearest year, is used.`,
})

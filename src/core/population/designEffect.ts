import type { SampledStratum } from './sampledStratum.ts'

/**
 * How much larger the variance of a total is than that of a simple random sample of as many homes:
 *
 *   deff = V(t)/V_srs      V_srs = N^2 (1 - n/N) S^2/n
 *   S^2 = n/(n - 1) sum w (y - m)^2 / sum w      w = A/a
 *
 * with n homes sampled of N = sum of w, and m the weighted mean. Above 1 where homes of a cluster are alike, below where homes of a stratum are.
 * Null where every home was surveyed, or all are equal.
 * Source: L. Kish, Survey Sampling, 1965, for the idea; S^2 from the weighted sample is common practice, no source.
 */
export function designEffect(
  strata: readonly SampledStratum[],
  variance: number,
  mean: number,
  correction: boolean,
): number | null {
  const sampled = strata.reduce((sum, { sampledHomes }) => sum + sampledHomes, 0)
  const weights = strata.reduce((sum, stratum) => sum + weightOf(stratum) * stratum.sampledHomes, 0)
  const squares = strata.reduce((sum, stratum) => sum + weightOf(stratum) * squaresAbout(stratum, mean), 0)
  const spread = (sampled / (sampled - 1)) * (squares / weights)
  const unsampled = correction ? 1 - sampled / weights : 1
  const simple = (weights ** 2 * unsampled * spread) / sampled
  return simple > 0 ? variance / simple : null
}

const weightOf = ({ populationUnits, sampledUnits }: SampledStratum) => populationUnits / sampledUnits

function squaresAbout({ units, summary }: SampledStratum, mean: number): number {
  if (units)
    return units.reduce(
      (sum, { homes }) => homes.reduce((inner, { value }) => inner + (value - mean) ** 2, sum),
      0,
    )
  const { homes, mean: own, variance } = summary!
  return (homes - 1) * variance + homes * (own - mean) ** 2
}

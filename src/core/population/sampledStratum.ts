import type { Survey, SurveyedHome, SurveyStratum } from './survey.ts'

/** What one sampled unit, a home or a whole cluster, adds up to. */
export interface SampledUnit {
  readonly homes: readonly SurveyedHome[]
}

/** A stratum with what was sampled of it: single units, or the summary of its homes. */
export interface SampledStratum {
  readonly name: string
  /** Units of the whole stratum: clusters where clusters were drawn, else homes. */
  readonly populationUnits: number
  readonly populationHomes: number | null
  readonly sampledUnits: number
  readonly sampledHomes: number
  readonly units: readonly SampledUnit[] | null
  readonly summary: SurveyStratum['sample'] | null
}

/** Puts surveyed homes into their strata and clusters. */
export function sampledStrata({ strata, homes = [] }: Pick<Survey, 'strata' | 'homes'>): SampledStratum[] {
  const only = strata.length === 1 ? strata[0]!.name : undefined
  const byStratum = new Map<string, SurveyedHome[]>(strata.map(({ name }) => [name, []]))
  for (const home of homes) byStratum.get(home.stratum ?? only!)?.push(home)
  return strata.map((stratum) => {
    const { name, homes: populationHomes = null, clusters, sample } = stratum
    const own = byStratum.get(name)!
    const units = clusters === undefined ? own.map((home) => ({ homes: [home] })) : clustersOf(own)
    return {
      name,
      populationUnits: clusters ?? populationHomes!,
      populationHomes,
      sampledUnits: sample?.homes ?? units.length,
      sampledHomes: sample?.homes ?? own.length,
      units: sample ? null : units,
      summary: sample ?? null,
    }
  })
}

function clustersOf(homes: readonly SurveyedHome[]): SampledUnit[] {
  const clusters = new Map<string, SurveyedHome[]>()
  for (const home of homes) {
    const cluster = clusters.get(home.cluster!) ?? []
    clusters.set(home.cluster!, cluster)
    cluster.push(home)
  }
  return [...clusters.values()].map((members) => ({ homes: members }))
}

import { statementsOf } from './graphqlEstimate.ts'

export interface Comparison {
  /** How many figures both gave. */
  readonly figures: number
  /** What the two say differently, or only one says, in words. */
  readonly differences: readonly string[]
}

/** Compares everything that two answers say of one household, however small the difference. */
export function compareEstimates(rest: unknown, graphql: unknown): Comparison {
  const [first, second] = [statementsOf(rest), statementsOf(graphql)]
  const differing = [...new Set([...first.keys(), ...second.keys()])].filter(
    (place) => first.get(place) !== second.get(place),
  )
  return {
    figures: [...first.values()].filter((value) => typeof value === 'number').length,
    differences: differing.map(
      (place) =>
        `${place}: REST says ${first.get(place) ?? 'nothing'}, GraphQL ${second.get(place) ?? 'nothing'}`,
    ),
  }
}

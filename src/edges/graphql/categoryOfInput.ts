import type { CategoryChangesInput } from './inputs/category.ts'

type Modes = NonNullable<(typeof CategoryChangesInput.$inferInput)['modes']>

/** Years, citation and n may be left out in GraphQL; in the shape that REST reads they are there, and null. */
export const modesOfInput = (modes: Modes) =>
  modes.map(({ draws, ...mode }) => ({
    ...mode,
    draws: draws.map(({ yearFrom = null, yearTo = null, provenance, ...figures }) => ({
      yearFrom,
      yearTo,
      ...figures,
      provenance: { citation: null, n: null, ...provenance },
    })),
  }))

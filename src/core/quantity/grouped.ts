import type { Term } from './term.ts'

/** Terms whose key occurs once, or that have none, and the groups of those that share one. */
export interface Grouped {
  readonly alone: readonly Term[]
  readonly groups: readonly (readonly Term[])[]
}

const NO_GROUPS: readonly (readonly Term[])[] = []

export function grouped(terms: readonly Term[], keyOf: (term: Term) => string | null | undefined): Grouped {
  // Most sums share nothing; they are told apart before anything is made for them.
  if (terms.length === 1 || !terms.some((term) => keyOf(term))) return { alone: terms, groups: NO_GROUPS }
  const alone: Term[] = []
  const byKey = new Map<string, Term[]>()
  for (const term of terms) {
    const key = keyOf(term)
    const group = key ? byKey.get(key) : alone
    if (group) group.push(term)
    else byKey.set(key!, [term])
  }
  const groups: Term[][] = []
  for (const group of byKey.values()) {
    if (group.length > 1) groups.push(group)
    else alone.push(group[0]!)
  }
  return { alone, groups }
}

import { DomainError } from '../fault.ts'
import { relaxation } from './relaxation.ts'

/** One way to deal with one independent unit of the household: what is done there, what it costs and what it is worth. */
export interface Choice<Part> {
  /** Whole minor units of the currency. */
  readonly cost: number
  /** Whole steps, so that sums are exact and equals are equal. */
  readonly value: number
  readonly parts: readonly Part[]
}

/** More ways than this to spend a budget are not followed: it would take seconds. Round prices make some hundreds. */
const MOST_WAYS = 20_000

/**
 * One choice for each unit, such that their values add up to the most within the budget: exact.
 *
 * The multiple-choice knapsack by dynamic programming over the ways that are not dominated: of two ways to deal with the
 * first units, the one that costs no less and is worth no more is dropped. Ways that even a relaxed rest (relaxation.ts)
 * can't bring up to a known good set are dropped, too. Ties go to fewer parts, then to the lower cost, then to the choice
 * that stands first.
 * Source: H. Kellerer, U. Pferschy, D. Pisinger, "Knapsack Problems", Springer 2004, chapter 11 (from memory).
 *
 * @param units for each, its choices; one of them does nothing and costs nothing
 * @param budget minor units; null for no bound
 * @throws DomainError plan-too-large
 */
export function bestSet<Part>(
  units: readonly (readonly Choice<Part>[])[],
  budget: number | null,
): Choice<Part> {
  const fronts = units.map((choices) => front(choices))
  const bound = budget ?? Infinity
  const rest = relaxation(fronts, bound)
  let ways: readonly Choice<Part>[] = [NOTHING]
  fronts.forEach((choices, i) => {
    ways = grown(ways, choices, bound).filter(
      ({ cost, value }) => value + rest.mostFrom(i + 1, bound - cost) >= rest.reached,
    )
  })
  return ways.at(-1)!
}

const NOTHING: Choice<never> = { cost: 0, value: 0, parts: [] }

/**
 * The ways, each gone on with by every choice that the budget allows; without a budget only the best of them matters.
 * @throws DomainError plan-too-large
 */
export function grown<Part>(
  ways: readonly Choice<Part>[],
  choices: readonly Choice<Part>[],
  budget: number,
): readonly Choice<Part>[] {
  const kept = front(combined(ways, choices, budget))
  if (kept.length > MOST_WAYS) throw tooLarge(kept.length)
  return budget === Infinity ? kept.slice(-1) : kept
}

const combined = <Part>(
  ways: readonly Choice<Part>[],
  choices: readonly Choice<Part>[],
  budget: number,
): Choice<Part>[] =>
  ways.flatMap((way) =>
    choices
      .filter((choice) => way.cost + choice.cost <= budget)
      .map((choice) => ({
        cost: way.cost + choice.cost,
        value: way.value + choice.value,
        parts: [...way.parts, ...choice.parts],
      })),
  )

/** The ways that no other makes needless, by rising cost and value. */
export function front<Part>(ways: readonly Choice<Part>[]): Choice<Part>[] {
  const sorted = ways.toSorted(
    (a, b) => a.cost - b.cost || b.value - a.value || a.parts.length - b.parts.length,
  )
  const kept: Choice<Part>[] = []
  for (const way of sorted) {
    const best = kept.at(-1)
    const isBetter =
      !best || way.value > best.value || (way.value === best.value && way.parts.length < best.parts.length)
    if (isBetter) kept.push(way)
  }
  return kept
}

const tooLarge = (ways: number) =>
  new DomainError(
    'plan-too-large',
    `There are more than ${MOST_WAYS} ways to spend this budget that have to be compared (${ways}). Name fewer measures, or give their prices in whole units of the currency.`,
  )

interface Costed {
  readonly cost: number
  readonly value: number
}

/** What the rest of the units can add at most, and what a good set reaches for certain. */
export interface Relaxation {
  /** No set of the units from this one on is worth more within the budget. */
  mostFrom(unit: number, budget: number): number
  /** Value of a set that fits. */
  readonly reached: number
}

interface Step extends Costed {
  readonly unit: number
}

/**
 * The multiple-choice knapsack in which a choice may be taken in part: its best is to take the steps along the upper hull
 * of each unit's choices in the order of their value for their cost, and the last one in part.
 * Source: P. Sinha, A. Zoltners, "The multiple-choice knapsack problem", Operations Research 27 (1979) 503-515 (from memory).
 *
 * @param fronts for each unit, its choices by rising cost and value, the first at no cost
 */
export function relaxation(fronts: readonly (readonly Costed[])[], budget: number): Relaxation {
  const steps = fronts
    .flatMap((choices, unit) => hullSteps(choices, unit))
    .sort((a, b) => b.value * a.cost - a.value * b.cost)
  const free = fronts.map(([first]) => first!.value)
  const freeFrom = fronts.map((_, unit) => free.slice(unit).reduce((sum, value) => sum + value, 0))
  const stepsFrom = fronts.map((_, unit) => totals(steps.filter((step) => step.unit >= unit)))
  return {
    mostFrom: (unit, left) => (unit < fronts.length ? freeFrom[unit]! + inPart(stepsFrom[unit]!, left) : 0),
    reached: (freeFrom[0] ?? 0) + whole(steps, budget),
  }
}

/** The corners of the upper hull, as steps from one to the next: each worth less for its cost than the one before. */
function hullSteps(choices: readonly Costed[], unit: number): Step[] {
  const corners: Costed[] = []
  for (const choice of choices) {
    while (corners.length > 1 && !isCorner(corners.at(-2)!, corners.at(-1)!, choice)) corners.pop()
    corners.push(choice)
  }
  return corners.slice(1).map(({ cost, value }, i) => ({
    unit,
    cost: cost - corners[i]!.cost,
    value: value - corners[i]!.value,
  }))
}

const isCorner = (from: Costed, middle: Costed, to: Costed): boolean =>
  (middle.value - from.value) * (to.cost - middle.cost) >
  (to.value - middle.value) * (middle.cost - from.cost)

interface Totals {
  readonly costs: readonly number[]
  readonly values: readonly number[]
}

function totals(steps: readonly Step[]): Totals {
  const [costs, values] = [[0], [0]]
  for (const { cost, value } of steps) {
    costs.push(costs.at(-1)! + cost)
    values.push(values.at(-1)! + value)
  }
  return { costs, values }
}

/** The steps that fit, and as much of the next as does. */
function inPart({ costs, values }: Totals, left: number): number {
  let [low, high] = [0, costs.length - 1]
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if (costs[middle]! <= left) low = middle
    else high = middle - 1
  }
  if (low === costs.length - 1) return values[low]!
  const share = (left - costs[low]!) / (costs[low + 1]! - costs[low]!)
  // Rounded up, so that a sum of whole steps is never taken to be out of reach.
  return Math.ceil(values[low]! + share * (values[low + 1]! - values[low]!))
}

/** Steps taken whole while they fit; a unit whose step did not fit goes no further. */
function whole(steps: readonly Step[], budget: number): number {
  const stopped = new Set<number>()
  let [left, value] = [budget, 0]
  for (const step of steps) {
    if (stopped.has(step.unit)) continue
    if (step.cost > left) stopped.add(step.unit)
    else {
      left -= step.cost
      value += step.value
    }
  }
  return value
}

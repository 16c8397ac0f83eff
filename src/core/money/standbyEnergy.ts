import { type Interval, intervalOfSum } from '../quantity/intervalOfSum.ts'
import type { Term } from '../quantity/term.ts'
import type { PricedMode } from './pricedMode.ts'

/** The energy of all modes together, kWh/yr: its interval, and its quantiles, each worked out once. */
export interface StandbyEnergy extends Interval {
  readonly terms: readonly Term[]
  /** The ends of the interval of any coverage: the quantiles (1 - coverage)/2 and (1 + coverage)/2. */
  endsAt(coverage: number): Omit<Interval, 'expected'>
}

export function standbyEnergy(interval: Interval, modes: readonly PricedMode[]): StandbyEnergy {
  const terms = modes.map((mode) => mode.energy)
  const known = new Map<number, Interval>()
  return {
    ...interval,
    terms,
    endsAt: (coverage) => {
      const ends = known.get(coverage) ?? intervalOfSum(terms, coverage)
      known.set(coverage, ends)
      return ends
    },
  }
}

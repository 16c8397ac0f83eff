import type { Warning } from '../../estimate/estimate.ts'
import type { Term } from '../../quantity/term.ts'
import type { ReadingContext } from '../powerModel.ts'
import type { Reading } from '../reading.ts'
import { againstOutlet } from './againstOutlet.ts'
import { againstUsualDraw } from './againstUsualDraw.ts'
import { averageResponding } from './averageResponding.ts'
import { voltageOfSupply } from './voltageOfSupply.ts'

/** What makes a reading hard to believe, each with what to do; the reading counts all the same. */
export function plausibility(reading: Reading, power: Term, context: ReadingContext): Warning[] {
  const watts = wattsAsShown(power)
  const unusual = context.usual ? againstUsualDraw(reading, watts, context.usual) : []
  return [
    ...unusual,
    // Whoever is told that mA were typed as A need not hear that no outlet carries so much.
    ...(unusual.length === 0 ? againstOutlet(reading, watts, context.supply) : []),
    ...voltageOfSupply(reading, context.supply),
    ...averageResponding(reading, context),
  ]
}

/** The reading's power with the meter's figure as it was shown: an error that reaches below zero moves the mean. */
function wattsAsShown({ coefficient, factors, metered }: Term): number {
  return factors.reduce((product, { mean }) => product * mean, coefficient * (metered?.value ?? 1))
}

import type { Interval } from '../../quantity/intervalOfSum.ts'
import { shown } from '../shown.ts'
import { step, type Step } from './step.ts'

/** What every kind ends with: the devices behind the reading, and what the interval means. */
export function lastSteps(
  { expected, low, high }: Interval,
  quantity: number,
  coverageProbability: number,
): Step[] {
  const interval = step(
    `All errors together: the value lies between the two ends with a probability of ${shown(100 * coverageProbability)} %.`,
    'the errors combined (JCGM 101:2008)',
    `${shown(expected)} W, between ${shown(low)} W and ${shown(high)} W`,
  )
  if (quantity === 1) return [interval]
  return [
    step(`One reading stands for all ${quantity} devices.`, `P x ${quantity}`, `${shown(expected)} W`),
    interval,
  ]
}

import type { Mode } from '../catalogue/category.ts'
import type { Distribution } from '../quantity/distribution.ts'
import { type Term, termMean } from '../quantity/term.ts'

/** An uncertain factor with a stream of its own, so that it is drawn once wherever it stands. */
export interface Drawn {
  readonly distribution: Distribution
  readonly stream: number
  /** Which factor of its stream it is. */
  readonly factor: number
}

/** Real power of all of a device's quantity, W, and the stream that it is drawn from. */
export interface Power {
  readonly term: Term
  readonly stream: number
}

/** Hours a week of one mode, and by how much a kWh in them is dearer than one spread over the week, currency/kWh. */
export interface Hours extends Drawn {
  readonly surcharge: number
}

/** A share of hours that a measure takes away or moves: share x persistence, or what is left, 1 - share x persistence. */
export interface Weight {
  readonly persistence: Drawn
  readonly share: number
  readonly isRest: boolean
}

/** A power over some hours: one product of the household's energy, before or after measures. */
export interface Load {
  readonly mode: Mode
  readonly power: Power
  readonly hours: Hours
  /** Independent of each other: no measure is applied to a load twice. */
  readonly weights: readonly Weight[]
}

/** Mean energy of a load, kWh/yr: exact, since all its parts are independent. */
export function meanKwh({ power, hours, weights }: Load, weeksPerYear: number): number {
  const kwh = (termMean(power.term) * hours.distribution.mean * weeksPerYear) / 1000
  return weights.reduce((product, weight) => product * meanWeight(weight), kwh)
}

function meanWeight({ persistence, share, isRest }: Weight): number {
  const taken = share * persistence.distribution.mean
  return isRest ? 1 - taken : taken
}

export const weighted = (load: Load, persistence: Drawn, share: number, isRest: boolean): Load => ({
  ...load,
  weights: [...load.weights, { persistence, share, isRest }],
})

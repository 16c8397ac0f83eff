import { Money } from './money.ts'
import type { EnergyComponent, Tariff } from './tariff.ts'

/** Name of the one line of energy of a tariff that has no components. */
export const ENERGY = 'energy'
/** Name of the line that fills a bill up to the minimum charge. */
export const MINIMUM = 'minimum charge'

/** The prices that are added up for every kWh; one, named `energy`, for a tariff that is not of several parts. */
export const componentsOf = (tariff: Tariff): readonly EnergyComponent[] =>
  tariff.kind === 'two-part' ? tariff.components : [named(tariff)]

const kept = new WeakMap<Tariff, EnergyComponent>()

/** The same object each time, since what is counted for a price is kept with it. */
function named(tariff: Exclude<Tariff, { kind: 'two-part' }>): EnergyComponent {
  const component = kept.get(tariff) ?? { ...tariff, name: ENERGY }
  kept.set(tariff, component)
  return component
}

/** What a line is multiplied by for the taxes on it, which are not on each other: 1 + the sum of their shares. */
export const taxFactor = ({ taxes = [] }: Tariff, line: string): Money =>
  factorOf(taxes.filter(({ on }) => !on || on.includes(line)))

/** The same of the line that fills a bill up to the minimum; never more than that of any line of energy. */
export const minimumTaxFactor = (tariff: Tariff): Money =>
  factorOf((tariff.taxes ?? []).filter(({ on }) => taxesMinimum(tariff, on)))

const factorOf = (taxes: readonly { readonly percent: number }[]): Money =>
  taxes.reduce((factor, { percent }) => factor.plus(new Money(percent).div(100)), new Money(1))

/** Whether a tax falls on what fills a bill up to the minimum: where it falls on all energy. */
export const taxesMinimum = (tariff: Tariff, on: readonly string[] | undefined): boolean =>
  !on || componentsOf(tariff).every(({ name }) => on.includes(name))

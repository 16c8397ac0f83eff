import type { Fault } from '../fault.ts'
import { codesInUse } from '../reference/codesInUse.ts'
import { notPriced } from './notPriced.ts'
import type { NamedTariff } from './tariff.ts'

/**
 * The rules on a list of tariffs to compare, on whatever of the raw input can be read: codes are known, and all are in
 * one currency, since a difference between two has none.
 */
export function checkTariffChoices(raw: unknown, tariffs: ReadonlyMap<string, NamedTariff>): Fault[] {
  if (typeof raw !== 'object' || raw === null || !('tariffs' in raw) || !Array.isArray(raw.tariffs)) return []
  const choices = (raw.tariffs as unknown[]).slice(0, MOST_CHECKED)
  const currencies = choices.map((choice) => currencyOf(choice, tariffs))
  const first = currencies.find((currency) => currency !== undefined)
  return choices.flatMap((choice, i): Fault[] => {
    const pointer = `/tariffs/${i}`
    if (typeof choice === 'string' && !tariffs.has(choice)) {
      const message = `There is no tariff "${choice.slice(0, 100)}". Known are: ${codesInUse(tariffs).join(', ')}.`
      return [{ pointer, code: 'unknown-code', message }]
    }
    const currency = currencies[i]
    const faults = notPriced(choice, pointer)
    if (currency === undefined || currency === first) return faults
    const message = `The tariffs to compare must be in one currency, but this one is in ${currency} and the first in ${first}.`
    return [...faults, { pointer, code: 'mixed-currencies', message }]
  })
}

/** Longer lists are refused by their shape. */
const MOST_CHECKED = 20

function currencyOf(choice: unknown, tariffs: ReadonlyMap<string, NamedTariff>): string | undefined {
  if (typeof choice === 'string') return tariffs.get(choice)?.tariff.currency
  if (typeof choice !== 'object' || choice === null || !('currency' in choice)) return undefined
  return typeof choice.currency === 'string' ? choice.currency : undefined
}

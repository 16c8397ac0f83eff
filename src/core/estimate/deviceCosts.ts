import { minorUnit } from '../money/minorUnit.ts'
import { type MoneyInterval, moneyInterval } from '../money/money.ts'
import type { PricedMode } from '../money/pricedMode.ts'
import type { StandbyCost } from '../money/priceStandby.ts'
import type { Interval } from '../quantity/intervalOfSum.ts'
import { significant } from '../quantity/significant.ts'

/** Relative; a thousand times what a binary product can be off by. */
const DOUBT = 1e-12
/** A whole number of minor units above this need not have an exact double. */
const MOST_UNITS = 1e15

/**
 * The cost of each device, digit for digit what StandbyCost and moneyInterval give. Where one certain price holds, the
 * product is binary: it shows the same digits as the decimal one unless it lies next to the middle between two figures
 * that can be shown, and then the decimal one is taken. Decimals for all devices would be a third of an estimate's work.
 */
export function deviceCosts(
  cost: StandbyCost,
  currency: string,
): (energy: Interval, modes: readonly PricedMode[]) => MoneyInterval {
  const { relativeUncertainty, perKwh } = cost.price
  const price = perKwh.toNumber()
  const places = minorUnit(currency)
  return ({ expected, low, high }, modes) => {
    const product = { expected: expected * price, low: low * price, high: high * price }
    const isPlain = relativeUncertainty === 0 && modes.every(({ schedule }) => schedule === null)
    if (
      isPlain &&
      isClear(product.expected, places) &&
      isClear(product.low, places) &&
      isClear(product.high, places)
    )
      return shown(product, places)
    return moneyInterval(cost.ofDevice({ expected, low, high }, modes), currency)
  }
}

/** Whether no error below DOUBT could change a digit that is shown. */
function isClear(cost: number, places: number): boolean {
  const [less, more] = [cost * (1 - DOUBT), cost * (1 + DOUBT)]
  const unit = 10 ** places
  const units = Math.round(less * unit)
  return units === Math.round(more * unit) && units < MOST_UNITS && significant(less) === significant(more)
}

function shown({ expected, low, high }: Interval, places: number): MoneyInterval {
  return {
    expected: significant(expected),
    low: significant(low),
    high: significant(high),
    amounts: {
      expected: amount(expected, places),
      low: amount(low, places),
      high: amount(high, places),
    },
  }
}

function amount(cost: number, places: number): string {
  const unit = 10 ** places
  const units = Math.round(cost * unit)
  if (places === 0) return String(units)
  return `${Math.floor(units / unit)}.${String(units % unit).padStart(places, '0')}`
}

import { billingPeriods } from './billingPeriods.ts'
import { billOf } from './billOf.ts'
import { Money, ZERO } from './money.ts'
import type { Tariff } from './tariff.ts'

/** All bills of a household's year: energy, fixed charges, taxes, each line rounded as the tariff says. */
export function annualBill(
  tariff: Tariff,
  annualUseKwh: number,
  monthlyUse: readonly number[] | null,
): Money {
  return billingPeriods(tariff, monthlyUse).reduce(
    (sum, period) => sum.plus(billOf(tariff, period, period.useShare.times(new Money(annualUseKwh))).total),
    ZERO,
  )
}

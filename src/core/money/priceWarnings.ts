import type { StandbyPrice } from './standbyPrice.ts'
import type { Tariff } from './tariff.ts'

/** What the reader of a cost must know of how standby was priced. */
export function priceWarnings(
  { minimumCharge, currency }: Tariff,
  { basis, perKwh, relativeUncertainty }: StandbyPrice,
): { readonly code: string; readonly message: string }[] {
  if (basis !== 'use-unknown') return []
  const [least, most] = [1 - relativeUncertainty, 1 + relativeUncertainty].map((by) =>
    perKwh.times(by).toPrecision(4),
  )
  const minimum = minimumCharge ? ' The minimum charge is left out.' : ''
  return [
    {
      code: 'annual-use-unknown',
      message: `The price of a kWh depends on the household’s annual use, which was not given: any from ${least} to ${most} ${currency} counts as equally likely.${minimum} Give annualUseKwh or monthlyUseKwh.`,
    },
  ]
}

import { componentsOf } from './componentsOf.ts'
import type { PriceBasis } from './standbyPrice.ts'
import { REFERENCE_YEAR, type Tariff } from './tariff.ts'

const WORDS: Readonly<Record<PriceBasis, string>> = {
  'one-price': 'A kWh costs the same however many came before it.',
  margin:
    'At the margin: the bill of the household’s annual use less the bill of that use without its standby, lines not rounded.',
  'use-unknown':
    'The household’s annual use was not given: any price between the cheapest and the dearest block counts as equally likely.',
}

/** How standby was priced, in words: at what margin, which year's hours, and how devices share the total. */
export function basisInWords(basis: PriceBasis, tariff: Tariff): string {
  const year = tariff.referenceYear ?? REFERENCE_YEAR
  const days = new Date(Date.UTC(year, 1, 29)).getUTCMonth() === 1 ? 366 : 365
  const byTime = componentsOf(tariff).some(({ kind }) => kind === 'time-of-use')
  return [
    WORDS[basis],
    ...(basis === 'margin' || byTime ? [`Counted on ${year}, a year of ${days} days (${days * 24} h).`] : []),
    ...(byTime ? ['Modes without stated hours are spread evenly over the week.'] : []),
    'Each device bears the total in proportion to its energy at the total’s price a kWh, so that no device depends on the order and all add up to the total.',
  ].join(' ')
}

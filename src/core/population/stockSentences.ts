import type { Warning } from '../estimate/estimate.ts'
import type { ResolvedItem } from './resolveStock.ts'
import type { Stock, StockEstimate } from './stock.ts'

const ASSUMPTIONS = [
  'Each home has a kind of device or not, independently of other homes and of other kinds, with the probability of its mean ownership.',
  'A home that has any has the whole number of devices next to the mean count; each device is an independent draw of its typical draw.',
  'Ownership is triangular between its bounds and the same for all homes: what is not known of it does not average out.',
  'The mean draw of each kind is known only to its meanDrawUncertainty, rectangular, the same error in every home: it does not average out. Where the request gives none it is the service’s own assumption, no source: sample ±50 %, published and given draws ±20 %, programme from its number of readings.',
  'Errors of different kinds of device are independent of each other. Were the catalogue wrong in one direction throughout, the intervals would be too narrow.',
  'Hours a week are means over homes, and taken as exact.',
] as const

const FORMULAS = [
  'energy(H) = sum over kinds of [ownership/mean ownership] x [mean draw/catalogue’s mean draw] x [sum over H homes of count x draw x hours]',
  'variance(H) = H x variance of one home + H (H - 1) x variance of what all homes share; relative to the mean the first part falls with 1/H, the second does not',
  'power(H) = energy(H)/hours of the year;   cost = energy x price;   emissions = energy x factor/(1 - gridLoss);   cut = cutShare x each',
] as const

/** What the stock model rests on, and what its reader must know, in words. */
export function stockSentences(
  { cutShare = 0 }: Stock,
  items: readonly ResolvedItem[],
  sampleData: boolean,
  switchableShare: number,
): Pick<StockEstimate, 'assumptions' | 'formulas' | 'warnings'> {
  const kept = items.filter(({ keepPowered }) => keepPowered !== null).map(({ name }) => name)
  const warnings: Warning[] = []
  if (sampleData)
    warnings.push({
      code: 'sample-data',
      message:
        'Typical draws of the catalogue are invented sample data; they show how the service works, not what devices draw.',
    })
  if (kept.length > 0)
    warnings.push({
      code: 'keep-powered-in-stock',
      message: `Some of these devices must stay powered: ${kept.join(', ')}. ${percent(switchableShare)} of the energy is of others.`,
    })
  if (cutShare > switchableShare)
    warnings.push({
      code: 'cut-above-switchable',
      message: `Cutting ${percent(cutShare)} would take more than the ${percent(switchableShare)} that devices use which need not stay powered.`,
    })
  return { assumptions: ASSUMPTIONS, formulas: FORMULAS, warnings }
}

const percent = (share: number) => `${Number((100 * share).toPrecision(3))} %`

import type { Catalogue } from '../catalogue/catalogue.ts'
import { cautionsFor } from '../cautions/cautions.ts'
import { METHOD_VERSION } from '../estimate/methodVersion.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import type { Distribution } from '../quantity/distribution.ts'
import { exact } from '../quantity/exact.ts'
import { type Interval, scaleInterval } from '../quantity/intervalOfSum.ts'
import { rectangularSum } from '../quantity/rectangularSum.ts'
import { significant, significantInterval } from '../quantity/significant.ts'
import { type Term, termVariance } from '../quantity/term.ts'
import type { Cumulants } from './cumulants.ts'
import { intervalOfHomes } from './intervalOfHomes.ts'
import { meanOwnership, ownershipFactor, relativeVariance } from './ownershipFactor.ts'
import { type ResolvedItem, resolveItem } from './resolveStock.ts'
import type { Rung, RungEstimate, Stock, StockEstimate, StockFigures } from './stock.ts'
import { stockSentences } from './stockSentences.ts'
import { homeCumulants, type HomeModel, sumOverHomes } from './sumOverHomes.ts'
import { usedFor } from './usedFor.ts'

const HOURS_PER_WEEK = 168

/**
 * What the devices of any number of homes draw while nobody uses them, from ownership, count, draw and hours.
 *
 *   E(H) = sum over kinds of device of  R u X(H)
 *   X(H)  the sum over H independent homes, each with the device at the probability E[o]; sumOverHomes.ts
 *   R     ownership over its mean, the same for all homes; ownershipFactor.ts
 *   u     mean draw over the catalogue's, rectangular on 1 +- meanDrawUncertainty, the same for all homes
 *
 * so that the spread between homes shrinks with sqrt(H), and what is not known of ownership and mean draw does not.
 * Means are exact; the ends of intervals were within 0.1 standard deviations of a home-by-home simulation in all tests
 * (test/core/population/estimateStock.test.ts). Kinds of device are independent of each other.
 * @param stock checked by checkStock
 */
export function estimateStock(stock: Stock, catalogue: Catalogue, settings: EstimateSettings): StockEstimate {
  const used = usedFor(stock, settings)
  const coverage = stock.coverageProbability ?? settings.coverageProbability
  const items = stock.items.map((item) => resolveItem(item, catalogue, used.weeksPerYear))
  const perHome = items.map((item) => homeCumulants(modelOf(item)).mean)
  const total = perHome.reduce((sum, energy) => sum + energy, 0)
  const switchable = items.reduce((sum, item, i) => (item.keepPowered ? sum : sum + perHome[i]!), 0)
  const switchableShare = total === 0 ? 0 : switchable / total
  const sampleData = items.some((item) => item.sampleData)
  return {
    method: 'stock',
    methodVersion: METHOD_VERSION,
    catalogueRevision: catalogue.revision,
    coverageProbability: coverage,
    sampleData,
    used,
    items: items.map(({ device: _device, sampleData: _sampleData, ...item }, i) => ({
      ...item,
      meanDrawUncertainty: significant(item.meanDrawUncertainty),
      energyKwhPerYearPerHome: significant(perHome[i]!),
      shareOfTotal: total === 0 ? 0 : significant(perHome[i]! / total),
    })),
    switchableShare: significant(switchableShare),
    cutShare: stock.cutShare ?? null,
    ladder: stock.ladder.map((rung) => estimateRung(rung, items, stock.cutShare ?? null, coverage, used)),
    ...stockSentences(stock, items, sampleData, switchableShare),
    cautions: cautionsFor(settings.cautions, 'population'),
  }
}

const modelOf = ({ device, ownership, countPerOwner }: ResolvedItem): HomeModel => ({
  device,
  ownership: meanOwnership(ownership),
  countPerOwner,
})

function estimateRung(
  { name, homes }: Rung,
  items: readonly ResolvedItem[],
  cutShare: number | null,
  coverage: number,
  used: StockEstimate['used'],
): RungEstimate {
  const terms = items.flatMap((item) => termOf(item, homes))
  const energy = intervalOfHomes(terms, homes, coverage)
  const { price, emissionFactor, weeksPerYear } = used
  /** Energy times a factor that all homes share. */
  const priced = (factor: number, relativeUncertainty = 0) =>
    scaleInterval(
      relativeUncertainty === 0
        ? energy
        : intervalOfHomes(terms.map(sharing(rectangularSum(1, relativeUncertainty))), homes, coverage),
      factor,
    )
  const { kgCo2ePerKwh, gridLoss = 0 } = emissionFactor
  const whole = {
    power: scaleInterval(energy, 1000 / (weeksPerYear * HOURS_PER_WEEK)),
    energy,
    cost: priced(price.pricePerKwh, price.relativeUncertainty),
    emissions: priced(kgCo2ePerKwh / (1 - gridLoss), emissionFactor.relativeUncertainty),
  }
  const shown = (interval: Interval, by: number) => significantInterval(scaleInterval(interval, by))
  return {
    name,
    homes,
    ...figuresOf(whole, 1),
    perHome: { powerW: shown(whole.power, 1 / homes), energyKwhPerYear: shown(energy, 1 / homes) },
    sharedVarianceShare: significant(sharedShare(items, terms, homes)),
    cut: cutShare === null ? null : figuresOf(whole, cutShare),
  }
}

const sharing =
  (distribution: Distribution) =>
  (term: Term): Term => ({
    ...term,
    shared: { key: 'factor', distribution },
  })

/** Up to this share of the variance not even the width of a part shows in an interval. */
const NO_SHARE = 1e-6

/** Whether the spread between homes still shows beside what they share; over a country it does not. */
function spreadShows(
  { ownership, meanDrawUncertainty }: ResolvedItem,
  homes: number,
  { mean, variance }: Cumulants,
): boolean {
  const shared = relativeVariance(ownership) + meanDrawUncertainty ** 2 / 3
  return variance / (homes * mean ** 2) > NO_SHARE * shared
}

/** One kind of device in `homes` homes, kWh/yr; nothing where no home has it, or it uses nothing. */
function termOf(item: ResolvedItem, homes: number): Term[] {
  const model = modelOf(item)
  const home = homeCumulants(model)
  if (home.mean === 0) return []
  return [
    {
      coefficient: 1,
      factors: [
        spreadShows(item, homes, home) ? sumOverHomes(model, homes) : exact(homes * home.mean),
        ownershipFactor(item.ownership, homes, home),
        rectangularSum(1, item.meanDrawUncertainty),
      ],
    },
  ]
}

interface Whole {
  readonly power: Interval
  readonly energy: Interval
  readonly cost: Interval
  readonly emissions: Interval
}

function figuresOf({ power, energy, cost, emissions }: Whole, share: number): StockFigures {
  const times = (interval: Interval, by: number) => significantInterval(scaleInterval(interval, share * by))
  return {
    powerW: times(power, 1),
    powerMw: times(power, 1e-6),
    energyKwhPerYear: times(energy, 1),
    energyGwhPerYear: times(energy, 1e-6),
    costPerYear: times(cost, 1),
    emissionsKgCo2ePerYear: times(emissions, 1),
    emissionsTonnesCo2ePerYear: times(emissions, 1e-3),
  }
}

/** V(E[total; what all homes share])/V(total): (1 + c^2)(1 + u^2/3) - 1 of each kind's mean squared. */
function sharedShare(items: readonly ResolvedItem[], terms: readonly Term[], homes: number): number {
  const total = terms.reduce((sum, term) => sum + termVariance(term), 0)
  if (total === 0) return 0
  const shared = items.reduce((sum, item) => {
    const mean = homes * homeCumulants(modelOf(item)).mean
    if (mean === 0) return sum
    const ownership = relativeVariance(item.ownership)
    return sum + mean ** 2 * ((1 + ownership) * (1 + item.meanDrawUncertainty ** 2 / 3) - 1)
  }, 0)
  return Math.min(1, shared / total)
}

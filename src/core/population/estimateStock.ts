import type { Catalogue } from '../catalogue/catalogue.ts'
import { revisionsUsed } from '../catalogue/revisionsUsed.ts'
import { cautionsFor } from '../cautions/cautions.ts'
import { METHOD_VERSION } from '../estimate/methodVersion.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import { type Interval, scaleInterval } from '../quantity/intervalOfSum.ts'
import { rectangularSum } from '../quantity/rectangularSum.ts'
import { significant, significantInterval } from '../quantity/significant.ts'
import type { Term } from '../quantity/term.ts'
import { intervalOfHomes } from './intervalOfHomes.ts'
import { type ResolvedItem, resolveItem } from './resolveStock.ts'
import { rungTerms } from './rungTerms.ts'
import type { Rung, RungEstimate, Stock, StockEstimate, StockFigures, StockItemShare } from './stock.ts'
import { stockSentences } from './stockSentences.ts'
import { homeCumulants, modelOf } from './sumOverHomes.ts'
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
    ...revisionsUsed(catalogue),
    referenceRevision: settings.referenceRevision,
    coverageProbability: coverage,
    sampleData,
    used,
    items: items.map((item, i) => shareOf(item, perHome[i]!, total)),
    switchableShare: significant(switchableShare),
    cutShare: stock.cutShare ?? null,
    ladder: stock.ladder.map((rung) => estimateRung(rung, items, stock.cutShare ?? null, coverage, used)),
    ...stockSentences(stock, items, sampleData, switchableShare),
    cautions: cautionsFor(settings.cautions, 'population'),
  }
}

const shareOf = (item: ResolvedItem, perHome: number, total: number): StockItemShare => ({
  name: item.name,
  category: item.category,
  catalogueLayer: item.catalogueLayer,
  keepPowered: item.keepPowered,
  ownership: item.ownership,
  countPerOwner: item.countPerOwner,
  meanDrawUncertainty: significant(item.meanDrawUncertainty),
  meanDrawUncertaintyFrom: item.meanDrawUncertaintyFrom,
  energyKwhPerYearPerHome: significant(perHome),
  shareOfTotal: total === 0 ? 0 : significant(perHome / total),
})

function estimateRung(
  { name, homes }: Rung,
  items: readonly ResolvedItem[],
  cutShare: number | null,
  coverage: number,
  used: StockEstimate['used'],
): RungEstimate {
  const rung = rungTerms(items, homes)
  const energy = intervalOfHomes(rung, rung.terms, coverage)
  const { price, emissionFactor, weeksPerYear } = used
  /** Energy times a factor that all homes share. */
  const priced = (factor: number, relativeUncertainty = 0) =>
    scaleInterval(
      relativeUncertainty === 0
        ? energy
        : intervalOfHomes(rung, rung.terms.map(sharing(relativeUncertainty)), coverage),
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
    sharedVarianceShare: significant(
      rung.variance === 0 ? 0 : Math.min(1, rung.sharedVariance / rung.variance),
    ),
    cut: cutShare === null ? null : figuresOf(whole, cutShare),
  }
}

const sharing =
  (relativeUncertainty: number) =>
  (term: Term): Term => ({
    ...term,
    shared: { key: 'factor', distribution: rectangularSum(1, relativeUncertainty) },
  })

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

import { amountOf, Money, moneyInterval } from '../money/money.ts'
import { minorUnit } from '../money/minorUnit.ts'
import { intervalOfDraws, monteCarloDraws } from '../quantity/monteCarlo.ts'
import { rectangularSum } from '../quantity/rectangularSum.ts'
import { scaleInterval } from '../quantity/interval.ts'
import { significantInterval } from '../quantity/significant.ts'
import type { Drawing } from '../quantity/term.ts'
import { type MeanSaving, meanSaving } from './meanSaving.ts'
import type { Part } from './part.ts'
import { probabilityOfPayback, simplePayback } from './payback.ts'
import type { PlanHousehold } from './planHousehold.ts'
import { savedMoney } from './savedMoney.ts'
import type { SavingDraws } from './savingDraws.ts'
import type { SavingsFactor } from './savingsFactor.ts'
import type { SavingFigures } from './savingsPlan.ts'

/** Turns what a set of measures saves into the figures that are shown. */
export type FiguresOf = (parts: readonly Part[], draws: SavingDraws) => SavingFigures

/** Price and emission factor are drawn once, since all measures share them. */
export function figuresOf(household: PlanHousehold, { factor }: SavingsFactor, drawing: Drawing): FiguresOf {
  const { resolved, price } = household
  const { currency } = resolved.used.tariff
  const priceDraws = relativeDraws(price.relativeUncertainty, PRICE_STREAM, drawing)
  const perKwh = factor.kgCo2ePerKwh / (1 - (factor.gridLoss ?? 0))
  const factorDraws = relativeDraws(factor.relativeUncertainty ?? 0, FACTOR_STREAM, drawing)
  return (parts, draws) => {
    const mean = meanSaving(parts, household)
    const kwh = intervalOf(mean, draws.kwh, resolved.coverage)
    const money = savedMoney(draws, mean, kwh, household, priceDraws)
    const cost = parts.reduce((sum, part) => sum + part.cost, 0)
    const price = cost / 10 ** minorUnit(currency)
    const lifeYears = shortestLife(parts)
    const saved = factorDraws
      ? intervalOf(
          mean,
          draws.kwh.map((x, i) => x * factorDraws[i]!),
          resolved.coverage,
        )
      : kwh
    return {
      price,
      priceAmount: amountOf(new Money(price), currency),
      savedKwhPerYear: significantInterval(kwh),
      savedMoneyPerYear: moneyInterval(money, currency),
      savedEmissionsKgCo2ePerYear: significantInterval(scaleInterval(saved, perKwh)),
      simplePaybackYears: simplePayback(price, money),
      probabilityOfPayback: probabilityOfPayback(price, lifeYears, money.draws),
      lifeYears,
    }
  }
}

/** Streams of what no device and no measure has. */
const PRICE_STREAM = -1
const FACTOR_STREAM = -2

function relativeDraws(uncertainty: number, stream: number, drawing: Drawing): Float64Array | null {
  if (uncertainty === 0) return null
  const term = { coefficient: 1, factors: [rectangularSum(1, uncertainty)], drawn: { drawing, stream } }
  return monteCarloDraws([term], drawing.draws, drawing.seed)
}

/** The exact mean, and the ends of the draws. */
function intervalOf({ kwh }: MeanSaving, draws: Float64Array, coverage: number) {
  const { low, high } = intervalOfDraws(draws.toSorted(), coverage)
  return { expected: kwh, low, high }
}

/** Of what costs something, else of all: a set pays back before the first of it has to be bought again. */
function shortestLife(parts: readonly Part[]): number {
  const bought = parts.filter(({ cost }) => cost > 0)
  return Math.min(...(bought.length > 0 ? bought : parts).map(({ measure }) => measure.lifeYears))
}

import type { Catalogue } from '../catalogue/catalogue.ts'
import { revisionsUsed } from '../catalogue/revisionsUsed.ts'
import type { Household } from '../inventory/household.ts'
import { annualBill } from '../money/annualBill.ts'
import { costDifference } from '../money/costDifference.ts'
import { amountOf, type MoneyInterval, moneyInterval } from '../money/money.ts'
import { basisInWords } from '../money/priceBasis.ts'
import { priceStandby, type StandbyCost } from '../money/priceStandby.ts'
import { priceWarnings } from '../money/priceWarnings.ts'
import { type StandbyEnergy, standbyEnergy } from '../money/standbyEnergy.ts'
import type { NamedTariff, Tariff } from '../money/tariff.ts'
import { tariffWarnings } from '../money/tariffWarnings.ts'
import { type Interval, intervalOfSum } from '../quantity/intervalOfSum.ts'
import { significant, significantInterval } from '../quantity/significant.ts'
import type { Warning } from './estimate.ts'
import { modesOf, modeTerms } from './estimateMode.ts'
import { type ResolvedHousehold, resolveHousehold } from './resolveHousehold.ts'
import type { EstimateSettings } from './settings.ts'

/** One household and the tariffs that it could have; the first is what the others are held against. */
export interface TariffComparisonRequest extends Omit<Household, 'tariff' | 'tariffCode'> {
  /** Codes of tariffs that the operator keeps, or tariffs. */
  readonly tariffs: readonly (string | Tariff)[]
}

export interface ComparedTariff {
  /** Null where the caller gave the tariff itself. */
  readonly tariffCode: string | null
  readonly name: string | null
  readonly source: string
  readonly sampleData: boolean
  readonly standbyPricePerKwh: number
  readonly priceBasis: string
  readonly costPerYear: MoneyInterval
  /** This tariff less the first, for the same energy. */
  readonly differencePerYear: MoneyInterval
  /** All bills of the household's year, rounded as the tariff says; null where its use is not known. */
  readonly annualBill: string | null
  readonly warnings: readonly Warning[]
}

export interface TariffComparison {
  readonly catalogueRevision: number
  /** Revision of the tariffs and emission factors that were there to choose from. */
  readonly referenceRevision: number
  /** Of the figures of the caller’s organisation that lay over it; 0 where there were none. */
  readonly overlayRevision: number
  readonly coverageProbability: number
  readonly currency: string
  readonly sampleData: boolean
  readonly annualUseKwh: number | null
  readonly methodVersion: string
  readonly energyKwhPerYear: Interval
  readonly tariffs: readonly ComparedTariff[]
}

/**
 * What the standby of one household costs under each of several tariffs, and how much more than under the first.
 * @param request checked by checkTariffChoices and checkHousehold
 */
export function compareTariffs(
  request: TariffComparisonRequest,
  catalogue: Catalogue,
  settings: EstimateSettings,
): TariffComparison {
  const choices = request.tariffs.map((choice) => choiceOf(choice, settings))
  // With a tariff of its own, since the operator's default need not have been there at a past revision.
  const resolved = resolveHousehold({ ...request, tariff: choices[0]!.tariff }, catalogue, settings)
  const modes = resolved.devices.flatMap((device) =>
    modesOf(device).map((mode) => modeTerms(mode, device, resolved)),
  )
  const interval = intervalOfSum(
    modes.map((mode) => mode.energy),
    resolved.coverage,
  )
  const energy = standbyEnergy(interval, modes)
  const costs = choices.map(({ tariff }) =>
    priceStandby(tariff, resolved.used, energy, modes, resolved.coverage),
  )
  return {
    ...revisionsUsed(catalogue),
    referenceRevision: settings.referenceRevision,
    coverageProbability: resolved.coverage,
    currency: choices[0]!.tariff.currency,
    sampleData: modes.some((mode) => mode.sampleData) || choices.some((choice) => choice.sampleData),
    annualUseKwh: resolved.used.annualUseKwh,
    methodVersion: resolved.used.methodVersion,
    energyKwhPerYear: significantInterval(interval),
    tariffs: choices.map((choice, i) =>
      compared(choice, costs[i]!, costs[0]!, energy, resolved, request.tariffDate),
    ),
  }
}

type Choice = Omit<NamedTariff, 'code' | 'name'> & Pick<ComparedTariff, 'tariffCode' | 'name'>
const OF_REQUEST = {
  tariffCode: null,
  name: null,
  retired: false,
  source: 'given in the request',
  sampleData: false,
}

function choiceOf(choice: string | Tariff, { tariffs }: EstimateSettings): Choice {
  if (typeof choice !== 'string') return { ...OF_REQUEST, tariff: choice }
  const { code, ...named } = tariffs.get(choice)!
  return { tariffCode: code, ...named }
}

function compared(
  { tariff, retired, ...shown }: Choice,
  cost: StandbyCost,
  first: StandbyCost,
  energy: StandbyEnergy,
  { coverage, used }: ResolvedHousehold,
  day: string | undefined,
): ComparedTariff {
  const { currency } = tariff
  const nothing = {
    expected: cost.total.expected.times(0),
    low: cost.total.low.times(0),
    high: cost.total.high.times(0),
  }
  const difference = cost === first ? nothing : costDifference(cost, first, energy, coverage)
  return {
    ...shown,
    standbyPricePerKwh: significant(cost.price.perKwh.toNumber()),
    priceBasis: basisInWords(cost.price.basis, tariff),
    costPerYear: moneyInterval(cost.total, currency),
    differencePerYear: moneyInterval(difference, currency),
    annualBill:
      used.annualUseKwh === null
        ? null
        : amountOf(annualBill(tariff, used.annualUseKwh, used.monthlyUseKwh), currency),
    warnings: [
      ...priceWarnings(tariff, cost.price),
      ...tariffWarnings(tariff, retired ? shown.tariffCode : null, day),
    ],
  }
}

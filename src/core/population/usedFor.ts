import { DomainError } from '../fault.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import type { MeanPrice, Stock, StockEstimate } from './stock.ts'

const REQUEST = 'given in the request'

/**
 * The operator's price where it is one price a kWh: what many homes pay is no household's block, time or tax.
 * Null where the operator's tariff is of another kind, so that the request has to bring a mean price.
 */
export function defaultPrice({ tariffs, defaultTariffCode }: EstimateSettings): {
  readonly price: MeanPrice
  readonly source: string
  readonly sample: boolean
} | null {
  const named = tariffs.get(defaultTariffCode)
  if (named?.tariff.kind !== 'flat' || (named.tariff.taxes ?? []).length > 0) return null
  const { currency, pricePerKwh, relativeUncertainty } = named.tariff
  return {
    price: { currency, pricePerKwh, ...(relativeUncertainty !== undefined && { relativeUncertainty }) },
    source: `${defaultTariffCode}: ${named.source}`,
    sample: named.sampleData,
  }
}

/**
 * Price, emission factor and weeks of a year: the request's, or the operator's.
 * @throws DomainError stock-not-checked where checkStock would have found a fault
 */
export function usedFor(stock: Stock, settings: EstimateSettings): StockEstimate['used'] {
  const own = stock.price ? null : defaultPrice(settings)
  const code = stock.emissionFactorCode ?? settings.defaultEmissionFactorCode
  const named = stock.emissionFactor ? null : settings.emissionFactors.get(code)
  const price = stock.price ?? own?.price
  const emissionFactor = stock.emissionFactor ?? named?.factor
  if (!price || !emissionFactor)
    throw new DomainError('stock-not-checked', 'A price or an emission factor was not looked up before use.')
  return {
    price,
    priceSource: own?.source ?? REQUEST,
    emissionFactor,
    emissionFactorSource: named ? `${code} (${named.region}, ${named.year}): ${named.source}` : REQUEST,
    weeksPerYear: stock.weeksPerYear ?? settings.weeksPerYear,
  }
}

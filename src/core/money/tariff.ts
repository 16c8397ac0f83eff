/**
 * Price structure of energy. This file is the place of every kind of tariff: today `flat`; block and
 * time-of-use tariffs join this union, and priceEnergy.ts is where each kind is priced.
 */
export interface FlatTariff {
  readonly kind: 'flat'
  /** ISO 4217 code. */
  readonly currency: string
  readonly pricePerKwh: number
  /** Half-width of the price's uncertainty relative to the price, 0 to 1; rectangular; shared by all devices. */
  readonly relativeUncertainty?: number
}

export type Tariff = FlatTariff

/** A tariff that the operator keeps under a code. */
export interface NamedTariff {
  readonly code: string
  readonly name: string
  readonly tariff: Tariff
  /** Where the price is from; "invented sample" for sample data. */
  readonly source: string
  readonly sampleData: boolean
}

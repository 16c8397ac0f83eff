/** How often a block starts anew, a fixed charge falls due, or a minimum is looked at. */
export const TARIFF_PERIODS = ['day', 'month', 'year'] as const
export type TariffPeriod = (typeof TARIFF_PERIODS)[number]

export const WEEKDAYS = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
] as const
export type Weekday = (typeof WEEKDAYS)[number]
/** A date that the operator names as a holiday is a `holiday` and no weekday. */
export const DAY_KINDS = [...WEEKDAYS, 'holiday'] as const
export type DayKind = (typeof DAY_KINDS)[number]

/** How each line of a bill is rounded to the currency's minor unit. */
export const LINE_ROUNDINGS = ['none', 'half-up', 'half-even'] as const

/** Days of every year, both ends in it, as MM-DD; from 11-01 to 02-28 goes over the turn of the year. */
export interface Season {
  readonly from: string
  readonly to: string
}

/** A part of one day on the clock of the place, as HH:MM in whole quarters of an hour; `to` is the first that is out, 24:00 at most. */
export interface HoursOfDay {
  readonly from: string
  readonly to: string
}

/** A part of some days of the week, all of them where none is named. */
export interface HoursOfWeek extends HoursOfDay {
  readonly days?: readonly Weekday[]
}

/** One step of a block price. */
export interface Block {
  /** Where it ends, kWh in the period; the last block has no end. */
  readonly upToKwh?: number
  readonly pricePerKwh: number
}

export interface FlatPrice {
  readonly kind: 'flat'
  readonly pricePerKwh: number
}

/** The price of a kWh goes by how many came before it in the period: rising or falling. */
export interface BlockPrice {
  readonly kind: 'block'
  readonly per: TariffPeriod
  readonly blocks: readonly Block[]
  /** Other blocks for a part of the year. */
  readonly seasons?: readonly (Season & { readonly blocks: readonly Block[] })[]
}

/** One price of a time-of-use component, and when it holds. */
export interface Band {
  readonly name: string
  readonly pricePerKwh: number
  /** All year where none is given. */
  readonly seasons?: readonly Season[]
  /** Every day, holidays too, where none is named. */
  readonly days?: readonly DayKind[]
  /** All day where none are given. */
  readonly hours?: readonly HoursOfDay[]
}

/** The price of a kWh goes by when it is used. The first band that fits holds. */
export interface TimeOfUsePrice {
  readonly kind: 'time-of-use'
  /** IANA name of the place's clock, such as Europe/Berlin. */
  readonly timeZone: string
  readonly bands: readonly Band[]
  /** Where no band fits. */
  readonly otherwisePricePerKwh: number
  /** Dates, YYYY-MM-DD. */
  readonly holidays?: readonly string[]
}

export type EnergyPrice = FlatPrice | BlockPrice | TimeOfUsePrice
/** One of several prices that are added up for every kWh. */
export type EnergyComponent = EnergyPrice & { readonly name: string }

/** What every tariff may have besides its price of energy. */
export interface TariffTerms {
  /** ISO 4217 code. */
  readonly currency: string
  /** Half-width of the price's uncertainty relative to the price, 0 to 1; rectangular; shared by all devices. */
  readonly relativeUncertainty?: number
  /** First and last day that it holds, YYYY-MM-DD; open where not given. */
  readonly validFrom?: string
  readonly validTo?: string
  readonly fixedCharges?: readonly {
    readonly name: string
    readonly amount: number
    readonly per: TariffPeriod
  }[]
  /** Each on the lines that it names, or on all lines; never on another tax. */
  readonly taxes?: readonly {
    readonly name: string
    readonly percent: number
    readonly on?: readonly string[]
  }[]
  /** What the lines of energy come to at least. */
  readonly minimumCharge?: { readonly amount: number; readonly per: TariffPeriod }
  readonly rounding?: (typeof LINE_ROUNDINGS)[number]
  /** Year whose days and hours are counted; REFERENCE_YEAR where not given. */
  readonly referenceYear?: number
}

export type FlatTariff = TariffTerms & FlatPrice
export type BlockTariff = TariffTerms & BlockPrice
export type TimeOfUseTariff = TariffTerms & TimeOfUsePrice
/** Several prices that are added up for every kWh, such as blocks of energy, a flat cost of power and a network price by time. */
export interface TwoPartTariff extends TariffTerms {
  readonly kind: 'two-part'
  readonly components: readonly EnergyComponent[]
}

/**
 * Price structure of energy that is taken from the grid. What is fed into it and charges on peak demand are out: a
 * standby load changes neither by anything that a household's inventory could tell.
 */
export type Tariff = FlatTariff | BlockTariff | TimeOfUseTariff | TwoPartTariff

/** A common year, which begins on a Wednesday, for tariffs that name none. */
export const REFERENCE_YEAR = 2025

/** A tariff that the operator keeps under a code. */
export interface NamedTariff {
  readonly code: string
  readonly name: string
  /** Out of lists and suggestions, but still found by its code. */
  readonly retired: boolean
  readonly tariff: Tariff
  /** Where the price is from; "invented sample" for sample data. */
  readonly source: string
  readonly sampleData: boolean
}

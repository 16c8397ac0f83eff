import type { KeepPoweredReason, Mode, Range } from '../catalogue/category.ts'
import type { Layer } from '../catalogue/overlay.ts'
import type { Caution } from '../cautions/caution.ts'
import type { EmissionFactor } from '../emissions/emissionFactor.ts'
import type { Warning } from '../estimate/estimate.ts'
import type { Interval } from '../quantity/intervalOfSum.ts'

/** What a kWh costs the homes on average, all in. */
export interface MeanPrice {
  /** ISO 4217 code. */
  readonly currency: string
  readonly pricePerKwh: number
  /** Half-width relative to the price; rectangular; shared by all homes. */
  readonly relativeUncertainty?: number
}

/** One kind of device in the homes: of the catalogue by `category`, or by `name` with a draw of its own. */
export interface StockItem {
  readonly category?: string
  /** Year of manufacture, where the catalogue's draw depends on it. */
  readonly year?: number
  /** All modes of the category with their default hours where left out. */
  readonly modes?: readonly { readonly mode: Mode; readonly hoursPerWeek?: number }[]
  readonly name?: string
  /** 5th, 50th and 95th percentile over devices in use, W; with `name`. */
  readonly drawW?: Range
  readonly hoursPerWeek?: number
  /** Share of homes that have at least one, 0 to 1; a range is triangular, and the same for all homes. */
  readonly ownership: number | Range
  /** Mean number of devices in a home that has any, 1 and more; the catalogue's default quantity where left out. */
  readonly countPerOwner?: number
  /** Half-width of what is not known of the mean draw, relative to it; see meanDrawUncertainty.ts for the default. */
  readonly meanDrawUncertainty?: number
}

export interface Rung {
  readonly name: string
  readonly homes: number
}

export interface Stock {
  readonly method: 'stock'
  readonly items: readonly StockItem[]
  /** From one home to a country. */
  readonly ladder: readonly Rung[]
  /** Share of the energy that is cut, 0 to 1. */
  readonly cutShare?: number
  readonly price?: MeanPrice
  readonly emissionFactor?: EmissionFactor
  readonly emissionFactorCode?: string
  readonly weeksPerYear?: number
  readonly coverageProbability?: number
  readonly catalogueRevision?: number
  /** Of tariffs and emission factors; the newest where none is named. */
  readonly referenceRevision?: number
  /** Of the figures of the caller’s organisation; 0 asks for the shared catalogue alone. */
  readonly overlayRevision?: number
}

/** Average power over the year, and what a year comes to. */
export interface StockFigures {
  readonly powerW: Interval
  readonly powerMw: Interval
  readonly energyKwhPerYear: Interval
  readonly energyGwhPerYear: Interval
  /** In the price's currency. */
  readonly costPerYear: Interval
  readonly emissionsKgCo2ePerYear: Interval
  readonly emissionsTonnesCo2ePerYear: Interval
}

export const UNCERTAINTY_ORIGINS = ['request', 'sample', 'published', 'programme', 'given-draw'] as const

export interface StockItemShare {
  readonly name: string
  /** Code of the category; null for a draw of its own. */
  readonly category: string | null
  /** Whose figures of the category went in; null for a draw of its own. */
  readonly catalogueLayer: Layer | null
  readonly keepPowered: KeepPoweredReason | null
  readonly ownership: Range
  readonly countPerOwner: number
  readonly meanDrawUncertainty: number
  /** Who set it: the request, or the service's own assumption by where the draw is from. */
  readonly meanDrawUncertaintyFrom: (typeof UNCERTAINTY_ORIGINS)[number]
  /** Expected, over all homes with and without. */
  readonly energyKwhPerYearPerHome: number
  readonly shareOfTotal: number
}

export interface RungEstimate extends Rung, StockFigures {
  readonly perHome: Pick<StockFigures, 'powerW' | 'energyKwhPerYear'>
  /** Share of the variance that is common to all homes, and does not shrink with their number. */
  readonly sharedVarianceShare: number
  /** What cutting cutShare is worth; null where none was asked for. */
  readonly cut: StockFigures | null
}

export interface StockEstimate {
  readonly method: 'stock'
  readonly methodVersion: string
  readonly catalogueRevision: number
  /** Revision of the tariffs and emission factors that were there to choose from. */
  readonly referenceRevision: number
  /** Of the figures of the caller’s organisation that lay over it; 0 where there were none. */
  readonly overlayRevision: number
  readonly coverageProbability: number
  readonly sampleData: boolean
  readonly used: {
    readonly price: MeanPrice
    readonly priceSource: string
    readonly emissionFactor: EmissionFactor
    readonly emissionFactorSource: string
    readonly weeksPerYear: number
  }
  readonly items: readonly StockItemShare[]
  /** Share of the expected energy of devices that need not stay powered. */
  readonly switchableShare: number
  readonly cutShare: number | null
  readonly ladder: readonly RungEstimate[]
  readonly assumptions: readonly string[]
  readonly formulas: readonly string[]
  readonly warnings: readonly Warning[]
  readonly cautions: readonly Caution[]
}

import type { Catalogue } from '../catalogue/catalogue.ts'
import type { Category, CategoryMode, Range } from '../catalogue/category.ts'
import { drawFor } from '../catalogue/drawFor.ts'
import { findCategory } from '../catalogue/findCategory.ts'
import { layerOf } from '../catalogue/layerOf.ts'
import { DomainError } from '../fault.ts'
import { type DeviceEnergy, deviceEnergy } from './deviceEnergy.ts'
import { meanDrawUncertainty, OF_GIVEN_DRAW } from './meanDrawUncertainty.ts'
import type { StockItem, StockItemShare } from './stock.ts'

/** One kind of device with everything filled in that the caller left to the catalogue. */
export interface ResolvedItem extends Omit<StockItemShare, 'energyKwhPerYearPerHome' | 'shareOfTotal'> {
  readonly device: DeviceEnergy
  readonly sampleData: boolean
}

/** @throws DomainError stock-not-checked where checkStock would have found a fault */
export function resolveItem(item: StockItem, catalogue: Catalogue, weeksPerYear: number): ResolvedItem {
  const resolved =
    item.category === undefined ? ofOwnDraw(item, weeksPerYear) : ofCategory(item, catalogue, weeksPerYear)
  const { ownership, meanDrawUncertainty: given } = item
  return {
    ...resolved,
    ownership:
      typeof ownership === 'number' ? { low: ownership, typical: ownership, high: ownership } : ownership,
    ...(given !== undefined && { meanDrawUncertainty: given, meanDrawUncertaintyFrom: 'request' }),
  }
}

type WithoutOwnership = Omit<ResolvedItem, 'ownership'>

const kwhPerW = (hoursPerWeek: number, weeksPerYear: number) => (hoursPerWeek * weeksPerYear) / 1000

function ofOwnDraw({ name, drawW, hoursPerWeek, countPerOwner }: StockItem, weeks: number): WithoutOwnership {
  if (name === undefined || drawW === undefined || hoursPerWeek === undefined) throw notChecked()
  return {
    name,
    category: null,
    catalogueLayer: null,
    keepPowered: null,
    countPerOwner: countPerOwner ?? 1,
    meanDrawUncertainty: OF_GIVEN_DRAW.relative,
    meanDrawUncertaintyFrom: OF_GIVEN_DRAW.from,
    device: deviceEnergy([{ draw: drawW, kwhPerW: kwhPerW(hoursPerWeek, weeks) }]),
    sampleData: false,
  }
}

function ofCategory(item: StockItem, catalogue: Catalogue, weeks: number): WithoutOwnership {
  const category = findCategory(catalogue, item.category!)
  if (!category) throw notChecked()
  const modes = modesOf(item, category)
  const draws = modes.map(({ known, hoursPerWeek }) => ({
    ...drawFor(known, item.year),
    kwhPerW: kwhPerW(hoursPerWeek, weeks),
  }))
  const uncertainty = meanDrawUncertainty(modes.map(({ known }) => known))
  return {
    name: category.name,
    category: category.code,
    catalogueLayer: layerOf(catalogue, category.code),
    keepPowered: category.keepPowered?.reason ?? null,
    countPerOwner: item.countPerOwner ?? Math.max(1, category.defaultQuantity),
    meanDrawUncertainty: uncertainty.relative,
    meanDrawUncertaintyFrom: uncertainty.from,
    device: deviceEnergy(draws.map((draw) => ({ draw: rangeOf(draw), kwhPerW: draw.kwhPerW }))),
    sampleData: draws.some(({ provenance }) => provenance === 'sample'),
  }
}

const rangeOf = ({ range }: { readonly range: Range }) => range

interface CountedMode {
  readonly known: CategoryMode
  readonly hoursPerWeek: number
}

function modesOf({ modes }: StockItem, category: Category): CountedMode[] {
  if (!modes) return category.modes.map((known) => ({ known, hoursPerWeek: known.defaultHoursPerWeek }))
  return modes.map(({ mode, hoursPerWeek }) => {
    const known = category.modes.find((one) => one.mode === mode)
    if (!known) throw notChecked()
    return { known, hoursPerWeek: hoursPerWeek ?? known.defaultHoursPerWeek }
  })
}

const notChecked = () =>
  new DomainError('stock-not-checked', 'An item of the stock was not looked up before it was used.')

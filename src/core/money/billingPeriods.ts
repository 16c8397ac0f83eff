import { componentsOf } from './componentsOf.ts'
import { daysOfYear } from './daysOfYear.ts'
import { Money, ZERO } from './money.ts'
import { inSeason } from './season.ts'
import { type Block, type BlockPrice, REFERENCE_YEAR, type Tariff } from './tariff.ts'

/** The blocks that hold on some of a period's days. */
export interface SeasonPart {
  readonly days: number
  readonly blocks: readonly Block[]
}

/** What one bill is made for: a month of the reference year, or the year where blocks go by the year. */
export interface BillingPeriod {
  readonly days: number
  readonly daysInYear: number
  /** Calendar months in it: 1 or 12. */
  readonly months: number
  /** 0 to 11; null for the whole year. */
  readonly month: number | null
  /** Share of the household's use in a year. */
  readonly useShare: Money
  /** Share of a load that is even over the year. */
  readonly evenShare: Money
  readonly partsOf: (price: BlockPrice) => readonly SeasonPart[]
}

/**
 * The periods of a reference year that bills are made for.
 * @param monthlyUse the household's use by month, in any unit, January first; even over the days where not known
 */
export function billingPeriods(
  tariff: Tariff,
  monthlyUse: readonly number[] | null,
): readonly BillingPeriod[] {
  const year = daysOfYear(tariff.referenceYear ?? REFERENCE_YEAR)
  const all = monthlyUse?.reduce((sum, use) => sum.plus(use), ZERO) ?? ZERO
  const periodOf = (month: number | null): BillingPeriod => {
    const days = month === null ? year : year.filter((day) => day.month === month + 1)
    const evenShare = new Money(days.length).div(year.length)
    const hasShape = monthlyUse !== null && month !== null && all.gt(0)
    return {
      days: days.length,
      daysInYear: year.length,
      months: month === null ? 12 : 1,
      month,
      useShare: hasShape ? new Money(monthlyUse[month]!).div(all) : evenShare,
      evenShare,
      partsOf: onceForEach((price) => partsOf(price, days)),
    }
  }
  if (byYear(tariff)) return [periodOf(null)]
  return Array.from({ length: 12 }, (_, month) => periodOf(month))
}

function onceForEach(work: (price: BlockPrice) => readonly SeasonPart[]): BillingPeriod['partsOf'] {
  const known = new Map<BlockPrice, readonly SeasonPart[]>()
  return (price) => {
    const parts = known.get(price) ?? work(price)
    known.set(price, parts)
    return parts
  }
}

/** Blocks by the year make the year one billing period; tariffFaults lets no others stand beside them. */
const byYear = (tariff: Tariff): boolean =>
  componentsOf(tariff).some((price) => price.kind === 'block' && price.per === 'year')

function partsOf(
  { blocks, seasons = [] }: BlockPrice,
  days: readonly { readonly monthDay: string }[],
): SeasonPart[] {
  const parts = [...seasons, { blocks }].map((part) => ({ days: 0, blocks: part.blocks }))
  for (const { monthDay } of days) {
    const season = seasons.findIndex((one) => inSeason(monthDay, one))
    parts[season === -1 ? seasons.length : season]!.days += 1
  }
  return parts.filter((part) => part.days > 0)
}

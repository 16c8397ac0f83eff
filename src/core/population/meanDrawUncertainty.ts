import type { CategoryMode, Provenance, TypicalDraw } from '../catalogue/category.ts'
import { drawCumulants } from './cumulants.ts'
import type { StockItemShare } from './stock.ts'

export interface MeanDrawUncertainty {
  /** Half-width relative to the mean draw, rectangular. */
  readonly relative: number
  readonly from: StockItemShare['meanDrawUncertaintyFrom']
}

const OF_SAMPLE = 0.5
const OF_PUBLISHED = 0.2

/**
 * How far the catalogue's mean draw of a category may be from that of the devices in these homes. It is the same error in
 * every home, so it does not shrink with their number. The service's own assumption, no source:
 *
 *   sample +-50 %;   published +-20 %;   programme +-sqrt(3) (sd/mean)/sqrt(n), 50 % at most and where n is not known
 *
 * The last is a standard uncertainty of the mean, as the half-width of a rectangular distribution. With draws of several
 * kinds the widest counts.
 */
export function meanDrawUncertainty(modes: readonly CategoryMode[]): MeanDrawUncertainty {
  const all = modes.flatMap(({ draws }) => draws.map(ofDraw))
  return all.reduce((widest, one) => (one.relative > widest.relative ? one : widest))
}

/** Of a draw that the request brought along: as of a published one. */
export const OF_GIVEN_DRAW: MeanDrawUncertainty = { relative: OF_PUBLISHED, from: 'given-draw' }

function ofDraw(draw: TypicalDraw): MeanDrawUncertainty {
  return { relative: byKind(draw, draw.provenance), from: draw.provenance.kind }
}

function byKind({ lowW: low, typicalW: typical, highW: high }: TypicalDraw, { kind, n }: Provenance): number {
  if (kind === 'sample' || (kind === 'programme' && n === null)) return OF_SAMPLE
  if (kind === 'published') return OF_PUBLISHED
  const { mean, variance } = drawCumulants({ low, typical, high })
  return Math.min(OF_SAMPLE, Math.sqrt((3 * variance) / n!) / mean)
}

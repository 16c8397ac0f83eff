import type { Category, CategoryMode, TypicalDraw } from '../catalogue/category.ts'
import { crc32 } from '../access/crc32.ts'
import { type Gathered, gatherReadings } from './gatherReadings.ts'
import { openAgainAt } from './openAgainAt.ts'
import { outliersOf, SMALLEST_W } from './outliersOf.ts'
import type { Proposal, ProposedFigure } from './proposal.ts'
import { quantileInterval } from './quantileInterval.ts'
import { quantileOf } from './quantileOf.ts'
import type { ReadDevice } from './readDevice.ts'
import type { Rejection } from './rejection.ts'

/** Fewer readings make no proposal: the 95th percentile would be the largest of very few. */
export const FEWEST_READINGS = 8
/** Nor do readings of fewer households, so that no figure speaks of one of them. */
export const FEWEST_HOUSEHOLDS = 8
/** Of the percentiles' intervals: the 90/10 custom of programme evaluation, as elsewhere. */
export const PROPOSAL_COVERAGE = 0.9

/**
 * What the readings of a category say of one of its typical draws: 5th, 50th and 95th percentile over devices, each with its
 * interval. Null where there are too few readings, or readings of too few households.
 * @param changedIn the revision that gave the category its present state
 * @param rejection the last one of this proposal
 */
export function propose(
  subject: { readonly category: Category; readonly changedIn: number },
  mode: CategoryMode,
  draw: TypicalDraw,
  readings: readonly ReadDevice[],
  rejection: Rejection | null,
): Proposal | null {
  const { category, changedIn } = subject
  const gathered = gatherReadings(mode, draw, category.defaultQuantity, readings)
  const { sortedW, households, organisations, leftOut } = gathered
  const n = sortedW.length
  if (n < FEWEST_READINGS || households < FEWEST_HOUSEHOLDS) return null
  const [low, typical, high] = [
    figureOf(gathered, 5, draw.lowW),
    figureOf(gathered, 50, draw.typicalW),
    figureOf(gathered, 95, draw.highW),
  ]
  const proposal: Omit<Proposal, 'version'> = {
    category: category.code,
    categoryName: category.name,
    mode: mode.mode,
    yearFrom: draw.yearFrom,
    yearTo: draw.yearTo,
    ...standing(n, draw, rejection),
    n,
    households,
    organisations,
    low,
    typical,
    high,
    largerThanNoise: typical.largerThanNoise,
    today: draw,
    outliers: shownOutliers(sortedW),
    leftOut,
    rejection,
  }
  return { ...proposal, version: versionOf(changedIn, proposal) }
}

/** The category's state, the number of readings, and a checksum of everything that the proposal says. */
function versionOf(changedIn: number, proposal: Omit<Proposal, 'version'>): string {
  const checksum = crc32(encodeURIComponent(JSON.stringify(proposal)))
  const digits = [...checksum].map((byte) => byte.toString(16).padStart(2, '0'))
  return `${changedIn}-${proposal.n}-${digits.join('')}`
}

function figureOf({ sortedW }: Gathered, percentile: 5 | 50 | 95, todayW: number): ProposedFigure {
  const share = percentile / 100
  const { lower, upper, coverage } = quantileInterval(sortedW.length, share, PROPOSAL_COVERAGE)
  const [lowest, highest] = [lower && sortedW[lower - 1]!, upper && sortedW[upper - 1]!]
  const proposedW = threeDigits(quantileOf(sortedW, share))
  return {
    percentile,
    proposedW,
    intervalLowW: lowest === null ? null : threeDigits(lowest),
    intervalHighW: highest === null ? null : threeDigits(highest),
    intervalCoverage: threeDigits(coverage),
    todayW,
    ratio: threeDigits(Math.max(proposedW, SMALLEST_W) / Math.max(todayW, SMALLEST_W)),
    largerThanNoise: (lowest !== null && todayW < lowest) || (highest !== null && todayW > highest),
  }
}

function standing(n: number, { provenance }: TypicalDraw, rejection: Rejection | null) {
  const rejected = rejection === null ? 0 : openAgainAt(rejection.n)
  const accepted = provenance.kind === 'programme' && provenance.n !== null ? openAgainAt(provenance.n) : 0
  if (n >= rejected && n >= accepted) return { status: 'open', openAgainAt: null } as const
  return rejected > accepted
    ? ({ status: 'rejected', openAgainAt: rejected } as const)
    : ({ status: 'accepted', openAgainAt: accepted } as const)
}

function shownOutliers(sortedW: readonly number[]) {
  const { lowerFenceW, upperFenceW, outsideW, ...rest } = outliersOf(sortedW)
  return {
    ...rest,
    lowerFenceW: threeDigits(lowerFenceW),
    upperFenceW: threeDigits(upperFenceW),
    outsideW: outsideW.map(threeDigits),
  }
}

/** Finer than any such interval; and a reading is not to be known again by its last digits. */
const threeDigits = (value: number) => Number(value.toPrecision(3))

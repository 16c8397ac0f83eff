import type { TypicalDraw } from '../catalogue/category.ts'
import type { LeftOut } from './gatherReadings.ts'
import type { Outliers } from './outliersOf.ts'
import type { ProposalPlace } from './proposalPlace.ts'
import type { Rejection } from './rejection.ts'

/** One of the three figures, as it is today and as the readings have it. */
export interface ProposedFigure {
  readonly percentile: 5 | 50 | 95
  /** Three significant digits, W. */
  readonly proposedW: number
  /** Ends of the interval of the percentile, W; null where there are too few readings to say. */
  readonly intervalLowW: number | null
  readonly intervalHighW: number | null
  /** How probable it is that the interval holds the percentile, at least. */
  readonly intervalCoverage: number
  readonly todayW: number
  /** Proposed over today's, both at least 0.01 W. */
  readonly ratio: number
  /** Whether today's figure lies beyond the interval, so that chance alone hardly explains the difference. */
  readonly largerThanNoise: boolean
}

/** `open` waits for an editor; `rejected` and `accepted` wait for more readings. */
export const PROPOSAL_STATUSES = ['open', 'rejected', 'accepted'] as const

/** What readings say of one typical draw. It names no household and no organisation. */
export interface Proposal extends ProposalPlace {
  readonly categoryName: string
  /** Names just this state of the proposal; what an answer to it is based on. */
  readonly version: string
  readonly status: (typeof PROPOSAL_STATUSES)[number]
  /** Readings behind it, one for each device. */
  readonly n: number
  readonly households: number
  readonly organisations: number
  readonly low: ProposedFigure
  readonly typical: ProposedFigure
  readonly high: ProposedFigure
  /** Whether today's typical draw lies beyond the interval of the proposed median. */
  readonly largerThanNoise: boolean
  readonly today: TypicalDraw
  readonly outliers: Outliers
  readonly leftOut: LeftOut
  /** The last one of it, if any. */
  readonly rejection: Rejection | null
  /** With so many readings it is open again; null where it is open. */
  readonly openAgainAt: number | null
}

import { z } from 'zod'
import { MODES } from '../core/catalogue/category.ts'
import { type Proposal, PROPOSAL_STATUSES } from '../core/proposals/proposal.ts'
import type { ProposalPlace } from '../core/proposals/proposalPlace.ts'
import { OPEN_AGAIN_RULE, PROPOSAL_METHOD } from '../core/proposals/proposalMethod.ts'
import { PROPOSAL_COVERAGE } from '../core/proposals/propose.ts'
import { yearsName, yearsNamed } from '../core/proposals/yearsName.ts'
import { revisionSchema } from './catalogueRevision.ts'
import { typicalDrawSchema } from './category.ts'
import { pageOf, pageQuery } from './paging.ts'

const watts = z.number().nonnegative()

const figureSchema = z
  .strictObject({
    percentile: z.union([z.literal(5), z.literal(50), z.literal(95)]),
    proposedW: watts,
    intervalLowW: watts.nullable().describe('null: too few readings to say'),
    intervalHighW: watts.nullable().describe('null: too few readings to say'),
    intervalCoverage: z
      .number()
      .describe('How probable it is that the interval holds the percentile, at least'),
    todayW: watts,
    ratio: z.number().positive().describe('Proposed over today’s, both at least 0.01 W'),
    largerThanNoise: z.boolean().describe('Whether today’s figure lies beyond the interval'),
  })
  .meta({ id: 'ProposedFigure' })

export const proposalSchema = z
  .strictObject({
    category: z.string(),
    categoryName: z.string(),
    mode: z.enum(MODES),
    years: z
      .string()
      .describe('Years of manufacture as the address has them: all, to-2009, 2010-2012, from-2013'),
    yearFrom: z.int().nullable(),
    yearTo: z.int().nullable(),
    version: z.string().describe('Names just this state of the proposal'),
    status: z.enum(PROPOSAL_STATUSES),
    n: z.int().describe('Readings, one for each device'),
    households: z.int(),
    organisations: z.int(),
    coverageProbability: z.number(),
    low: figureSchema,
    typical: figureSchema,
    high: figureSchema,
    largerThanNoise: z
      .boolean()
      .describe('Whether today’s typical draw lies beyond the interval of the proposed one'),
    today: typicalDrawSchema,
    todayIsSampleData: z.boolean().describe('Whether today’s figures are invented'),
    outliers: z
      .strictObject({
        rule: z.string(),
        leftIn: z.literal(true),
        lowerFenceW: watts,
        upperFenceW: watts,
        count: z.int(),
        outsideW: z.array(watts).describe('Of more than twenty the ten at each end'),
      })
      .meta({ id: 'ProposalOutliers' }),
    leftOut: z
      .strictObject({
        severalDevices: z.int().describe('Read several devices at once'),
        notStable: z.int().describe('Series of samples that are not stable, or too short to tell'),
        noFittingYear: z.int().describe('Year of manufacture not known, or beyond all figures of the mode'),
      })
      .meta({ id: 'ReadingsLeftOut', description: 'Readings that do not count, by the reason why' }),
    method: z.string(),
    rejection: z
      .strictObject({
        n: z.int(),
        reason: z.string(),
        author: revisionSchema.shape.author,
        at: z.iso.datetime(),
      })
      .nullable()
      .describe('The last one of this proposal'),
    openAgainAt: z.int().nullable().describe('With so many readings it is open again; null where it is open'),
    openAgainRule: z.string(),
  })
  .meta({ id: 'CatalogueProposal', description: 'What readings say of one typical draw; names no household' })

export const proposalListSchema = pageOf(proposalSchema).meta({ id: 'CatalogueProposalList' })

export const proposalListQuerySchema = z.strictObject({
  ...pageQuery,
  includeAnswered: z
    .stringbool()
    .default(false)
    .describe('Whether to list those, too, that were answered and wait for more readings'),
})

export const proposalParameters = z.strictObject({
  category: z.string().describe('Code of the category; not a name or alias'),
  mode: z.string().describe('The mode, such as standby'),
  years: z.string().describe('Years of manufacture: all, to-2009, 2010-2012 or from-2013'),
})

/** What stands for a proposal in addresses, tags and cursors. */
export const addressOf = (place: ProposalPlace) => `${place.category}/${place.mode}/${yearsName(place)}`

/** What an address speaks of; null where it can be none. */
export function placeOf({
  category,
  mode,
  years,
}: z.output<typeof proposalParameters>): ProposalPlace | null {
  const known = MODES.find((one) => one === mode)
  const named = yearsNamed(years)
  return known && named ? { category, mode: known, ...named } : null
}

export type ShownProposal = z.output<typeof proposalSchema>

export function showProposal(proposal: Proposal): ShownProposal {
  const { rejection, outliers, leftOut, today } = proposal
  return {
    ...proposal,
    years: yearsName(proposal),
    coverageProbability: PROPOSAL_COVERAGE,
    todayIsSampleData: today.provenance.kind === 'sample',
    outliers: { ...outliers, outsideW: [...outliers.outsideW], leftIn: true },
    leftOut,
    method: PROPOSAL_METHOD,
    rejection: rejection && {
      n: rejection.n,
      reason: rejection.reason,
      author: rejection.author,
      at: rejection.at.toISOString(),
    },
    openAgainRule: OPEN_AGAIN_RULE,
  }
}

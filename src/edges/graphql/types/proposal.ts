import type { Proposal } from '../../../core/proposals/proposal.ts'
import { addressOf, placeOf, type ShownProposal, showProposal } from '../../../schemas/proposal.ts'
import { readProposal } from '../../../useCases/readProposal.ts'
import { builder } from '../builder.ts'
import { SHORT_LIST } from '../limits.ts'
import { nodeOrNull } from '../nodeOrNull.ts'
import { TypicalDrawType } from './category.ts'
import { ModeEnum } from './enums.ts'
import { ProposalStatusEnum } from './proposalStatus.ts'
import { AuthorType } from './catalogueRevision.ts'
import { type UserError, UserErrorInterface } from './userErrors.ts'

const ProposedFigureType = builder.objectRef<ShownProposal['low']>('ProposedFigure').implement({
  description: 'One of the three figures of a typical draw, as it is today and as readings have it.',
  fields: (t) => ({
    percentile: t.exposeInt('percentile', { description: '5, 50 or 95; over devices.' }),
    proposedW: t.exposeFloat('proposedW', { description: 'The percentile of the readings, W.' }),
    intervalLowW: t.exposeFloat('intervalLowW', {
      nullable: true,
      description: 'Lower end of its interval, W; null where there are too few readings to say.',
    }),
    intervalHighW: t.exposeFloat('intervalHighW', {
      nullable: true,
      description: 'Upper end of its interval, W; null where there are too few readings to say.',
    }),
    intervalCoverage: t.exposeFloat('intervalCoverage', {
      description: 'How probable it is that the interval holds the percentile, at least (0 to 1).',
    }),
    todayW: t.exposeFloat('todayW', { description: 'The figure of the catalogue today, W.' }),
    ratio: t.exposeFloat('ratio', { description: 'Proposed over today’s, both at least 0.01 W.' }),
    largerThanNoise: t.exposeBoolean('largerThanNoise', {
      description: 'Whether today’s figure lies beyond the interval.',
    }),
  }),
})

const OutliersType = builder.objectRef<ShownProposal['outliers']>('ProposalOutliers').implement({
  description: 'Readings that stand far from the others.',
  fields: (t) => ({
    rule: t.exposeString('rule', { description: 'How they are found, with its source.' }),
    leftIn: t.exposeBoolean('leftIn', { description: 'Whether the figures count them.' }),
    lowerFenceW: t.exposeFloat('lowerFenceW', { description: 'Readings below this are named, W.' }),
    upperFenceW: t.exposeFloat('upperFenceW', { description: 'Readings above this are named, W.' }),
    count: t.exposeInt('count', { description: 'Number of them.' }),
    outsideW: t.exposeFloatList('outsideW', {
      complexity: SHORT_LIST,
      description: 'They themselves, W; of more than twenty the ten at each end.',
    }),
  }),
})

const LeftOutType = builder.objectRef<ShownProposal['leftOut']>('ReadingsLeftOut').implement({
  description: 'Readings that do not count, by the reason why.',
  fields: (t) => ({
    severalDevices: t.exposeInt('severalDevices', { description: 'Read several devices at once.' }),
    notStable: t.exposeInt('notStable', {
      description: 'Series of samples that are not stable, or too short to tell.',
    }),
    noFittingYear: t.exposeInt('noFittingYear', {
      description: 'Year of manufacture not known, or beyond all figures of the mode.',
    }),
  }),
})

const RejectionType = builder
  .objectRef<NonNullable<ShownProposal['rejection']>>('ProposalRejection')
  .implement({
    description: 'That an editor turned a proposal down.',
    fields: (t) => ({
      n: t.exposeInt('n', { description: 'Readings that there were then.' }),
      reason: t.exposeString('reason', { description: 'Why.' }),
      at: t.exposeString('at', { description: 'When (RFC 3339).' }),
      author: t.field({ type: AuthorType, description: 'Who.', resolve: ({ author }) => author }),
    }),
  })

export const CatalogueProposalType = builder.node(builder.objectRef<ShownProposal>('CatalogueProposal'), {
  description:
    'What the readings of all organisations say of one typical draw. It names no household and no organisation.',
  id: {
    description: 'Opaque name of the proposal, unique in the whole service.',
    resolve: addressOf,
  },
  loadOne: (id, { deps, sender }) => {
    const [category = '', mode = '', years = ''] = id.split('/')
    const place = placeOf({ category, mode, years })
    return nodeOrNull(async () => showProposal(await readProposal(deps, sender, place)))
  },
  fields: (t) => ({
    category: t.exposeString('category', { description: 'Code of the category.' }),
    categoryName: t.exposeString('categoryName', { description: 'Its name.' }),
    mode: t.expose('mode', { type: ModeEnum, description: 'The mode.' }),
    yearFrom: t.exposeInt('yearFrom', {
      nullable: true,
      description: 'First year of manufacture; null is open.',
    }),
    yearTo: t.exposeInt('yearTo', { nullable: true, description: 'Last year of manufacture; null is open.' }),
    version: t.exposeString('version', {
      description: 'Names just this state of the proposal; `basedOn` of an answer to it.',
    }),
    status: t.expose('status', { type: ProposalStatusEnum, description: 'Whether it waits for an editor.' }),
    n: t.exposeInt('n', { description: 'Readings, one for each device.' }),
    households: t.exposeInt('households', { description: 'Households that they are of.' }),
    organisations: t.exposeInt('organisations', { description: 'Organisations that took them.' }),
    coverageProbability: t.exposeFloat('coverageProbability', {
      description: 'Coverage that the intervals are made for (0 to 1).',
    }),
    low: t.expose('low', { type: ProposedFigureType, description: '5th percentile.' }),
    typical: t.expose('typical', { type: ProposedFigureType, description: '50th percentile.' }),
    high: t.expose('high', { type: ProposedFigureType, description: '95th percentile.' }),
    largerThanNoise: t.exposeBoolean('largerThanNoise', {
      description: 'Whether today’s typical draw lies beyond the interval of the proposed one.',
    }),
    today: t.expose('today', { type: TypicalDrawType, description: 'The typical draw of the catalogue.' }),
    todayIsSampleData: t.exposeBoolean('todayIsSampleData', {
      description: 'True where today’s figures are invented sample data.',
    }),
    outliers: t.expose('outliers', { type: OutliersType, description: 'Readings far from the others.' }),
    leftOut: t.expose('leftOut', { type: LeftOutType, description: 'Readings that do not count.' }),
    method: t.exposeString('method', { description: 'How the figures were made, and what they do not say.' }),
    rejection: t.expose('rejection', {
      type: RejectionType,
      nullable: true,
      description: 'The last one of this proposal; null where there was none.',
    }),
    openAgainAt: t.exposeInt('openAgainAt', {
      nullable: true,
      description: 'With so many readings it is open again; null where it is open.',
    }),
    openAgainRule: t.exposeString('openAgainRule', { description: 'The rule behind it.' }),
  }),
})

/** What the refusal of useCases/basedOnProposal.ts holds. */
interface StaleProposal {
  readonly current: Proposal
}

export const StaleProposalErrorType = builder.objectRef<UserError>('StaleProposalError').implement({
  description: 'Readings have come or gone, or the category was edited. Look at the proposal again.',
  interfaces: [UserErrorInterface],
  fields: (t) => ({
    current: t.field({
      type: CatalogueProposalType,
      description: 'The proposal as it is now; its `version` is what to base the next answer on.',
      resolve: ({ details }) => showProposal((details as unknown as StaleProposal).current),
    }),
  }),
})

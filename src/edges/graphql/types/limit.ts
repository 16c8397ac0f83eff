import type { Limit } from '../../../core/limits/limit.ts'
import type { ComparedLimit, LimitAnswer, LimitReason } from '../../../core/limits/limitCheck.ts'
import { builder } from '../builder.ts'
import { EXPECTED_LENGTH } from '../limits.ts'
import { FlagEnum, ModeEnum } from './enums.ts'
import { IntervalType } from './interval.ts'
import {
  ExternalSupplyTypeEnum,
  JurisdictionEnum,
  LimitConditionEnum,
  LimitPurposeEnum,
  LimitReasonEnum,
  LimitVerdictEnum,
} from './limitEnums.ts'
import { SourceMarkEnum } from './tariffEnums.ts'
import { CautionType, WarningType } from './warning.ts'

export const LimitType = builder.objectRef<Limit>('PublishedLimit').implement({
  description: 'A published limit on the power of one mode.',
  fields: (t) => ({
    code: t.exposeString('code', { description: 'Stable name.' }),
    jurisdiction: t.expose('jurisdiction', { type: JurisdictionEnum, description: 'Where it holds.' }),
    purpose: t.expose('purpose', { type: LimitPurposeEnum, description: 'What it is for.' }),
    regulation: t.exposeString('regulation', { description: 'Regulation that sets it.' }),
    annex: t.exposeString('annex', { nullable: true, description: 'Annex of the regulation.' }),
    point: t.exposeString('point', { nullable: true, description: 'Point of the annex.' }),
    appliesFrom: t.exposeString('appliesFrom', {
      nullable: true,
      description:
        'First day on which a device placed on the market falls under it, YYYY-MM-DD; null is open.',
    }),
    appliesUntil: t.exposeString('appliesUntil', {
      nullable: true,
      description: 'Last such day, YYYY-MM-DD; null is open.',
    }),
    mode: t.expose('mode', { type: ModeEnum, description: 'Mode.' }),
    condition: t.expose('condition', {
      type: LimitConditionEnum,
      description: 'What the device does in the mode.',
    }),
    supplyType: t.expose('supplyType', {
      type: ExternalSupplyTypeEnum,
      nullable: true,
      description: 'Kind of external power supply; for no-load only.',
    }),
    outputAboveW: t.exposeFloat('outputAboveW', {
      nullable: true,
      description: 'Rated output of the supplies that it is for, above this, W.',
    }),
    outputUpToW: t.exposeFloat('outputUpToW', { nullable: true, description: 'The same, up to this, W.' }),
    limitW: t.exposeFloat('limitW', { description: 'The limit, W.' }),
    toleranceW: t.exposeFloat('toleranceW', {
      nullable: true,
      description: 'How far above it a test by an authority may come out, W.',
    }),
    tolerancePercent: t.exposeFloat('tolerancePercent', {
      nullable: true,
      description: 'The same in percent of the limit.',
    }),
    toleranceSource: t.exposeString('toleranceSource', {
      nullable: true,
      description: 'Where the tolerance was published.',
    }),
    toleranceMark: t.expose('toleranceMark', {
      type: SourceMarkEnum,
      nullable: true,
      description: 'How well that is confirmed.',
    }),
    source: t.exposeString('source', { description: 'Where the limit was published.' }),
    mark: t.expose('mark', { type: SourceMarkEnum, description: 'How well that is confirmed.' }),
  }),
})

const LimitReasonType = builder.objectRef<LimitReason>('LimitReason').implement({
  description: 'Why a verdict is as it is.',
  fields: (t) => ({
    code: t.expose('code', { type: LimitReasonEnum, description: 'Kind of reason.' }),
    message: t.exposeString('message', { description: 'The same in words, with its figures.' }),
  }),
})

const ComparedLimitType = builder.objectRef<ComparedLimit>('ComparedLimit').implement({
  description: 'One limit that may apply, and how the power lies to it.',
  fields: (t) => ({
    limit: t.expose('limit', { type: LimitType, description: 'The limit.' }),
    aboveFromW: t.exposeFloat('aboveFromW', {
      description: "The limit and the tolerance that an authority's test allows, W.",
    }),
    verdict: t.expose('verdict', { type: LimitVerdictEnum, description: 'How the power lies to it.' }),
    reason: t.expose('reason', { type: LimitReasonType, description: 'Why.' }),
  }),
})

export const LimitCheckType = builder.objectRef<LimitAnswer>('LimitCheck').implement({
  description: 'A power held against the published limits that its device may fall under.',
  fields: (t) => ({
    methodVersion: t.exposeString('methodVersion', { description: 'Version of the estimation method.' }),
    catalogueRevision: t.exposeInt('catalogueRevision', { description: 'Catalogue revision that was used.' }),
    overlayRevision: t.exposeInt('overlayRevision', {
      description: "Revision of your organisation's own figures that lay over it; 0 where there were none.",
    }),
    coverageProbability: t.exposeFloat('coverageProbability', {
      description: 'Probability that the interval holds the power, 0 to 1.',
    }),
    verdict: t.expose('verdict', {
      type: LimitVerdictEnum,
      description: 'That of all limits, where they agree.',
    }),
    reason: t.expose('reason', { type: LimitReasonType, description: 'Why.' }),
    notice: t.exposeString('notice', { description: 'That this is no compliance test, and why.' }),
    powerW: t.expose('powerW', { type: IntervalType, description: 'The power, W.' }),
    confidence: t.expose('confidence', {
      type: FlagEnum,
      nullable: true,
      description: 'How sure the origin of the power is; null where the request gave it.',
    }),
    compared: t.field({
      type: [ComparedLimitType],
      description: 'Every limit that may apply, in the order of their codes.',
      resolve: ({ compared }) => compared,
    }),
    warnings: t.field({
      type: [WarningType],
      description: 'What the reader of these figures must know.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.warnings },
      resolve: ({ warnings }) => warnings,
    }),
    cautions: t.field({
      type: [CautionType],
      description: 'Safety statements.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.cautions },
      resolve: ({ cautions }) => cautions,
    }),
  }),
})

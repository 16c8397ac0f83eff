import type { ModeEstimate, Origin } from '../../../core/estimate/estimate.ts'
import { builder } from '../builder.ts'
import { FlagEnum, HoursFromEnum, ModeEnum, OriginKindEnum } from './enums.ts'
import { IntervalType } from './interval.ts'

const OriginType = builder.objectRef<Origin>('Origin').implement({
  description: "Where a mode's power came from.",
  fields: (t) => ({
    kind: t.expose('kind', { type: OriginKindEnum, description: 'A reading, or the catalogue.' }),
    detail: t.exposeString('detail', {
      description: "The reading's kind, or the provenance of the catalogue's figure.",
    }),
    explanation: t.exposeString('explanation', {
      description: 'The formula and what was assumed, in one sentence.',
    }),
  }),
})

export const ModeEstimateType = builder.objectRef<ModeEstimate>('ModeEstimate').implement({
  description: 'What a device draws in one mode.',
  fields: (t) => ({
    mode: t.expose('mode', { type: ModeEnum, description: 'The mode.' }),
    hoursPerYear: t.exposeFloat('hoursPerYear', { description: 'Expected hours a year (h) in this mode.' }),
    hoursFrom: t.expose('hoursFrom', { type: HoursFromEnum, description: 'Who gave the hours.' }),
    confidence: t.expose('confidence', {
      type: FlagEnum,
      description: 'How sure the origin of the figures is.',
    }),
    origin: t.expose('origin', { type: OriginType, description: 'Where the power came from.' }),
    powerW: t.expose('powerW', {
      type: IntervalType,
      description: 'Real power, W, all of the quantity together.',
    }),
    apparentPowerVa: t.expose('apparentPowerVa', {
      type: IntervalType,
      nullable: true,
      description: 'Apparent power, VA; null unless current or apparent power was read.',
    }),
    energyKwhPerYear: t.expose('energyKwhPerYear', {
      type: IntervalType,
      description: 'Energy, kWh a year.',
    }),
  }),
})

import type { MeasureProgress, PlanProgress } from '../../../core/verification/verification.ts'
import { builder } from '../builder.ts'
import { SHORT_LIST } from '../limits.ts'
import { IntervalType } from './interval.ts'
import { MeasureStatusEnum } from './verificationEnums.ts'

const MeasureProgressType = builder.objectRef<MeasureProgress>('MeasureProgress').implement({
  description: 'A planned measure, and what became of it.',
  fields: (t) => ({
    name: t.exposeString('name', { description: 'What was meant to be done.' }),
    deviceIds: t.stringList({
      description: 'Ids of its devices.',
      complexity: SHORT_LIST,
      resolve: ({ deviceIds }) => deviceIds,
    }),
    expectedKwhPerYear: t.exposeFloat('expectedKwhPerYear', {
      description: 'What it was expected to save, kWh a year.',
    }),
    status: t.expose('status', { type: MeasureStatusEnum, description: 'Whether it was carried out.' }),
    reason: t.exposeString('reason', { description: 'Why that is said, in words.' }),
    savedKwhPerYear: t.expose('savedKwhPerYear', {
      type: IntervalType,
      description: 'What its devices saved, kWh a year.',
    }),
    realisation: t.expose('realisation', { type: IntervalType, description: 'Saved over expected.' }),
  }),
})

export const PlanProgressType = builder.objectRef<PlanProgress>('PlanProgress').implement({
  description: 'What part of a plan was carried out.',
  fields: (t) => ({
    measures: t.field({
      type: [MeasureProgressType],
      description: 'Each measure, in the order sent.',
      resolve: ({ measures }) => measures,
    }),
    expectedKwhPerYear: t.exposeFloat('expectedKwhPerYear', {
      description: 'What all measures were expected to save, kWh a year.',
    }),
    savedKwhPerYear: t.expose('savedKwhPerYear', {
      type: IntervalType,
      description: 'What their devices saved, kWh a year.',
    }),
    realisation: t.expose('realisation', { type: IntervalType, description: 'Saved over expected.' }),
    carriedOutShare: t.exposeFloat('carriedOutShare', {
      description: 'Share of the expected energy that belongs to measures that were carried out, 0 to 1.',
    }),
    savedOutsidePlanKwhPerYear: t.expose('savedOutsidePlanKwhPerYear', {
      type: IntervalType,
      description: 'What devices that no measure names saved, kWh a year.',
    }),
  }),
})

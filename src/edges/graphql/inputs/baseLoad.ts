import { builder } from '../builder.ts'
import { BaseLoadEstimatorKindEnum } from '../types/baseLoadEnums.ts'
import { HouseholdInput } from './estimate.ts'

const IntervalBlockInput = builder.inputType('IntervalBlockInput', {
  description:
    'Intervals that follow each other without a break: either energy or mean power. A null value is a gap.',
  fields: (t) => ({
    start: t.string({
      required: true,
      description: 'Start of the first interval with its offset from UTC, such as 2025-03-30T00:00:00+01:00.',
    }),
    intervalSeconds: t.float({ required: true, description: 'Length of each interval, s.' }),
    wattHours: t.floatList({
      required: { list: false, items: false },
      description: 'Energy of each interval, Wh.',
    }),
    watts: t.floatList({
      required: { list: false, items: false },
      description: 'Mean power of each interval, W.',
    }),
  }),
})

const DateSpanInput = builder.inputType('DateSpanInput', {
  description: 'Local dates, both included, as YYYY-MM-DD.',
  fields: (t) => ({
    from: t.string({ required: true, description: 'First date.' }),
    to: t.string({ required: true, description: 'Last date.' }),
  }),
})

const InventoryPowerInput = builder.inputType('InventoryPowerInput', {
  description: 'A power that is known with an interval, W.',
  fields: (t) => ({
    expected: t.float({ required: true, description: 'Mean, W.' }),
    low: t.float({ required: true, description: 'Lower end, W.' }),
    high: t.float({ required: true, description: 'Upper end, W.' }),
  }),
})

export const BaseLoadInput = builder.inputType('BaseLoadInput', {
  description:
    'Interval data of a home, and what is known beside it. Only the blocks are required; null is the same as absent. Fault pointers in error extensions are JSON Pointers into this input.',
  fields: (t) => ({
    blocks: t.field({ type: [IntervalBlockInput], required: true, description: 'The data.' }),
    timeZone: t.string({
      description: 'IANA name of the home’s time zone; else the offsets of the starts tell local time.',
    }),
    estimator: t.field({
      type: BaseLoadEstimatorKindEnum,
      description: 'Which estimator to build on; not the minimum hour, which has no interval.',
    }),
    nightFromHour: t.int({ description: 'Beginning of the night window, local hour; 1 by default.' }),
    nightToHour: t.int({ description: 'End of the night window, local hour; 5 by default.' }),
    coverageProbability: t.float({
      description: 'Probability that an interval shall hold the value, 0.5 to 0.99.',
    }),
    daysAway: t.field({ type: [DateSpanInput], description: 'When nobody was at home; left out.' }),
    generation: t.boolean({ description: 'True where there is generation behind the meter.' }),
    inventory: t.field({ type: HouseholdInput, description: 'The devices of the home.' }),
    inventoryPowerW: t.field({
      type: InventoryPowerInput,
      description: 'In place of an inventory: what its devices draw in their low-power modes.',
    }),
  }),
})

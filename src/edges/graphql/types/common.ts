import type { KeepPoweredReason, Range } from '../../../core/catalogue/category.ts'
import { builder } from '../builder.ts'
import { KeepPoweredReasonEnum } from './enums.ts'

export const RangeType = builder.objectRef<Range>('Range').implement({
  description:
    'Bounds and most likely value of a quantity that is known only as a range; the field that holds it names the unit.',
  fields: (t) => ({
    low: t.exposeFloat('low', { description: 'Lower bound.' }),
    typical: t.exposeFloat('typical', { description: 'Most likely value.' }),
    high: t.exposeFloat('high', { description: 'Upper bound.' }),
  }),
})

export const KeepPoweredType = builder
  .objectRef<{ readonly reason: string; readonly note: string }>('KeepPowered')
  .implement({
    description: 'That a device must stay powered, and why.',
    fields: (t) => ({
      reason: t.field({
        type: KeepPoweredReasonEnum,
        description: 'Kind of reason.',
        resolve: ({ reason }) => reason as KeepPoweredReason,
      }),
      note: t.exposeString('note', { description: 'What could happen otherwise, in a sentence.' }),
    }),
  })

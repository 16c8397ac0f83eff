import type { Interval } from '../../../core/quantity/intervalOfSum.ts'
import { builder } from '../builder.ts'

export const IntervalType = builder.objectRef<Interval>('Interval').implement({
  description:
    'Mean, and the ends of the symmetric-probability coverage interval at the coverage probability of the estimate. The field that holds it names the unit.',
  fields: (t) => ({
    expected: t.exposeFloat('expected', { description: 'Mean.' }),
    low: t.exposeFloat('low', { description: 'Lower end.' }),
    high: t.exposeFloat('high', { description: 'Upper end.' }),
  }),
})

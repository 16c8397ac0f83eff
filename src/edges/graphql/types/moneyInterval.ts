import type { Amounts, MoneyInterval } from '../../../core/money/money.ts'
import { builder } from '../builder.ts'

const AmountsType = builder.objectRef<Amounts>('Amounts').implement({
  description: 'Sums of money as decimal text, rounded half-even to the minor unit of the currency.',
  fields: (t) => ({
    expected: t.exposeString('expected', { description: 'Mean.' }),
    low: t.exposeString('low', { description: 'Lower end.' }),
    high: t.exposeString('high', { description: 'Upper end.' }),
  }),
})

export const MoneyIntervalType = builder.objectRef<MoneyInterval>('MoneyInterval').implement({
  description:
    'Mean, and the ends of the coverage interval, of a sum of money; figures to reckon with, and amounts to show.',
  fields: (t) => ({
    expected: t.exposeFloat('expected', { description: 'Mean.' }),
    low: t.exposeFloat('low', { description: 'Lower end.' }),
    high: t.exposeFloat('high', { description: 'Upper end.' }),
    amounts: t.expose('amounts', { type: AmountsType, description: 'The same, to show.' }),
  }),
})

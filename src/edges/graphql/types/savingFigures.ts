import type { Payback, SavingFigures } from '../../../core/savings/savingsPlan.ts'
import { builder } from '../builder.ts'
import { IntervalType } from './interval.ts'
import { MoneyIntervalType } from './moneyInterval.ts'

const PaybackType = builder.objectRef<Payback>('Payback').implement({
  description: 'Simple payback, years; null is never.',
  fields: (t) => ({
    expected: t.exposeFloat('expected', {
      nullable: true,
      description: 'The price over the mean saving a year.',
    }),
    low: t.exposeFloat('low', { nullable: true, description: 'Lower end.' }),
    high: t.exposeFloat('high', { nullable: true, description: 'Upper end.' }),
  }),
})

export const SavingFiguresType = builder.objectRef<SavingFigures>('SavingFigures').implement({
  description: 'What a measure, or a set of them, saves and costs.',
  fields: (t) => ({
    price: t.exposeFloat('price', { description: "Of all pieces, in the plan's currency." }),
    priceAmount: t.exposeString('priceAmount', { description: 'The same as decimal text.' }),
    savedKwhPerYear: t.expose('savedKwhPerYear', {
      type: IntervalType,
      description: 'Energy saved, kWh a year.',
    }),
    savedMoneyPerYear: t.expose('savedMoneyPerYear', {
      type: MoneyIntervalType,
      description: 'The bill as it is less the bill without what is saved, a year.',
    }),
    savedEmissionsKgCo2ePerYear: t.expose('savedEmissionsKgCo2ePerYear', {
      type: IntervalType,
      description: 'Emissions saved, kg CO2e a year, by `savingsFactor`.',
    }),
    simplePaybackYears: t.expose('simplePaybackYears', {
      type: PaybackType,
      description: 'Years until the price is saved, without interest.',
    }),
    probabilityOfPayback: t.exposeFloat('probabilityOfPayback', {
      description: 'That the money saved over the life is at least the price, 0 to 1.',
    }),
    lifeYears: t.exposeFloat('lifeYears', {
      description: 'Life, years; of a set the shortest of those that cost something.',
    }),
  }),
})

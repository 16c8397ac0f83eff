import { expect, test } from 'vitest'
import { Money } from '../../../src/core/money/money.ts'
import { simplePayback } from '../../../src/core/savings/payback.ts'

const saving = (low: number, expected: number, high: number) => ({
  expected: new Money(expected),
  low: new Money(low),
  high: new Money(high),
})

test('payback is the price over the money saved a year, and its low end is that of the highest saving', () => {
  expect(simplePayback(20, saving(4, 5, 10))).toEqual({ expected: 4, low: 2, high: 5 })
})

test('where nothing is saved, or money is lost, it is never', () => {
  expect(simplePayback(20, saving(-1, 0, 10))).toEqual({ expected: null, low: 2, high: null })
})

test('what costs nothing is paid back at once, even where it saves nothing', () => {
  expect(simplePayback(0, saving(-1, 0, 0))).toEqual({ expected: 0, low: 0, high: 0 })
})

import { describe, expect, test } from 'vitest'
import { availableMeasures } from '../../../src/core/savings/availableMeasure.ts'
import type { MeasureChoice } from '../../../src/core/savings/savingsRequest.ts'
import { testSettings } from '../../helpers/testSettings.ts'
import { planSavings } from '../../../src/core/savings/planSavings.ts'
import { catalogue, television } from './household.ts'

/** The measures of the tests as if an operator had invented them. */
const invented = new Map(
  [...testSettings.measures].map(([code, measure]) => [code, { ...measure, sampleData: true }]),
)
const chosen = (choice: MeasureChoice) => availableMeasures({ measures: [choice] }, invented)[0]!

describe('an invented measure', () => {
  const figures = { price: 9, lifeYears: 4, persistence: 0.8 }

  test.each<MeasureChoice>([
    { code: 'habit', ...figures },
    { code: 'timer', ...figures, ownDrawW: 0.4, hoursOffPerWeek: 40 },
    { code: 'setting', ...figures, fromMode: 'idle', toMode: 'standby' },
    { code: 'new', ...figures, newDrawW: { low: 0.1, typical: 0.2, high: 0.3 } },
  ])('has nothing invented left once the household gave all its figures: $code', (choice) => {
    expect(chosen(choice).sampleData).toBe(false)
    for (const field of Object.keys(choice).filter((one) => one !== 'code'))
      expect(chosen({ ...choice, [field]: undefined }).sampleData).toBe(true)
  })

  test('of the operator’s own figures that is not invented stays so, whatever the household gives', () => {
    const [own] = availableMeasures({ measures: [{ code: 'habit' }] }, testSettings.measures)
    expect(own!.sampleData).toBe(false)
  })

  test('takes a single figure as one that is certain, and a range as it is', () => {
    const range = { low: 0.1, typical: 0.2, high: 0.3 }
    expect(chosen({ code: 'new', newDrawW: 0.4 }).newDrawW).toEqual({ low: 0.4, typical: 0.4, high: 0.4 })
    expect(chosen({ code: 'new', newDrawW: range }).newDrawW).toEqual(range)
  })

  test('makes the plan sample data, with a warning', () => {
    const planWith = (measures: typeof invented) => {
      const plan = { measures: [{ code: 'habit' }] }
      return planSavings({ devices: [television], plan }, catalogue, { ...testSettings, measures })
    }
    expect(planWith(invented).warnings.map(({ code }) => code)).toContain('sample-measures')
    expect(planWith(invented).sampleData).toBe(true)
    expect(planWith(new Map(testSettings.measures)).warnings.map(({ code }) => code)).not.toContain(
      'sample-measures',
    )
  })
})

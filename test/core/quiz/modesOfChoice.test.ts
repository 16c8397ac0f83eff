import { describe, expect, test } from 'vitest'
import type { Category } from '../../../src/core/catalogue/category.ts'
import { HOURS_CHOICES, HOURS_OF_CHOICE } from '../../../src/core/quiz/hoursChoice.ts'
import { modesOfChoice } from '../../../src/core/quiz/modesOfChoice.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'

const television = testCategories.find(({ code }) => code === 'television')!
const withHours = (...hours: readonly number[]): Category => ({
  ...television,
  modes: (['off', 'standby', 'idle'] as const).slice(0, hours.length).map((mode, i) => ({
    ...television.modes[0]!,
    mode,
    defaultHoursPerWeek: hours[i]!,
  })),
})

describe('modesOfChoice', () => {
  test('leaves the hours to the catalogue where the choice is the usual ones', () => {
    expect(modesOfChoice(withHours(20, 100), 'usual')).toEqual([{ mode: 'standby' }, { mode: 'off' }])
  })

  test('divides the hours of a choice as the hours of the catalogue divide, by hand', () => {
    // 3 to 6 h an evening, typically 4.5: 21, 31.5 and 42 h a week; a quarter of it off, the rest standby.
    expect(modesOfChoice(withHours(30, 90), 'evenings')).toEqual([
      { mode: 'standby', hoursPerWeek: { low: 15.75, typical: 23.63, high: 31.5 } },
      { mode: 'off', hoursPerWeek: { low: 5.25, typical: 7.88, high: 10.5 } },
    ])
  })

  test('a mode that the catalogue gives no hours is not counted, unless no mode has any', () => {
    expect(modesOfChoice(withHours(0, 140), 'rarely')).toEqual([
      { mode: 'standby', hoursPerWeek: { low: 0, typical: 2, high: 7 } },
    ])
    expect(modesOfChoice(withHours(0, 0), 'rarely').map(({ hoursPerWeek }) => hoursPerWeek)).toEqual([
      { low: 0, typical: 1, high: 3.5 },
      { low: 0, typical: 1, high: 3.5 },
    ])
  })

  test('every choice of every shipped category is in order and fits into a week', async () => {
    const { categories } = await readSeed()
    for (const category of categories)
      for (const choice of HOURS_CHOICES.filter((one) => one !== 'usual')) {
        const hours = modesOfChoice(category, choice).map((mode) => mode.hoursPerWeek as HoursRange)
        for (const { low, typical, high } of hours)
          expect([low, typical, high]).toEqual(sorted([low, typical, high]))
        const most = hours.reduce((sum, { high }) => sum + high, 0)
        expect(most).toBeCloseTo(HOURS_OF_CHOICE[choice].high, 1)
        expect(hours.reduce((sum, { typical }) => sum + typical, 0)).toBeLessThan(168)
      }
  })

  test('longer choices stand for more hours than shorter ones', () => {
    const typical = HOURS_CHOICES.filter((one) => one !== 'usual').map((one) => HOURS_OF_CHOICE[one].typical)
    expect(typical).toEqual(sorted(typical).reverse())
  })
})

interface HoursRange {
  readonly low: number
  readonly typical: number
  readonly high: number
}
const sorted = (values: readonly number[]) => [...values].sort((one, other) => one - other)

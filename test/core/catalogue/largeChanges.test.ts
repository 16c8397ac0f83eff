import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { TypicalDraw } from '../../../src/core/catalogue/category.ts'
import { largeChanges } from '../../../src/core/catalogue/largeChanges.ts'
import { categoryWith, drawWith, modeWith } from './sampleCategory.ts'

const withDraws = (...draws: TypicalDraw[]) => categoryWith({ modes: [modeWith({ draws })] })
const figures = (before: number, after: number) =>
  largeChanges(
    withDraws(drawWith({ lowW: 0.01, typicalW: before, highW: 1000 })),
    withDraws(drawWith({ lowW: 0.01, typicalW: after, highW: 1000 })),
  ).map(({ figure }) => figure)
const inShort = (before: ReturnType<typeof categoryWith>, after: ReturnType<typeof categoryWith>) =>
  largeChanges(before, after).map(
    ({ pointer, yearFrom, yearTo, figure, beforeW, afterW }) =>
      `${pointer} ${yearFrom}-${yearTo} ${figure} ${beforeW}->${afterW}`,
  )

describe('a change of a draw figure', () => {
  test.each([
    [1, 3, false],
    [3, 1, false],
    [0.7, 2.1, false],
    [0.1, 0.3, false],
    [1, 3.001, true],
    [3.001, 1, true],
    [2, 200, true],
  ])('from %d W to %d W is large: %s', (before, after, large) => {
    expect(figures(before, after)).toEqual(large ? ['typicalW'] : [])
  })

  test.each([
    [0, 0.03, false],
    [0, 0.031, true],
    [0.031, 0, true],
    [0, 0.001, false],
  ])('from %d W to %d W, below what a meter resolves, is large: %s', (before, after, large) => {
    expect(figures(before, after)).toEqual(large ? ['typicalW'] : [])
  })

  test('is as large in one direction as in the other', () => {
    const watts = fc.double({ min: 0, max: 1000, noNaN: true })
    fc.assert(
      fc.property(watts, watts, (one, other) => {
        expect(figures(one, other)).toEqual(figures(other, one))
      }),
    )
  })

  test('is told with figure, years, before and after', () => {
    expect(
      largeChanges(withDraws(drawWith()), withDraws(drawWith({ lowW: 1.5, typicalW: 6.5, highW: 20 }))),
    ).toEqual([
      {
        pointer: '/modes/0/draws/0/typicalW',
        mode: 'standby',
        yearFrom: null,
        yearTo: null,
        figure: 'typicalW',
        beforeW: 2,
        afterW: 6.5,
      },
      {
        pointer: '/modes/0/draws/0/highW',
        mode: 'standby',
        yearFrom: null,
        yearTo: null,
        figure: 'highW',
        beforeW: 4,
        afterW: 20,
      },
    ])
  })
})

describe('draws that come and go', () => {
  test('a new draw for years that had a figure is held against it', () => {
    const split = withDraws(drawWith({ yearTo: 2012 }), drawWith({ yearFrom: 2013, lowW: 0.1 }))
    expect(inShort(withDraws(drawWith()), split)).toEqual(['/modes/0/draws/1/lowW 2013-null lowW 1->0.1'])
  })

  test('years that are split without another figure are no change', () => {
    const split = withDraws(drawWith({ yearTo: 2012 }), drawWith({ yearFrom: 2013 }))
    expect(inShort(withDraws(drawWith()), split)).toEqual([])
    expect(inShort(split, withDraws(drawWith()))).toEqual([])
  })

  test('a draw for years that had none is no change of a figure', () => {
    const more = withDraws(
      drawWith({ yearFrom: 2000, yearTo: 2009, lowW: 0.001 }),
      drawWith({ yearFrom: 2010 }),
    )
    expect(inShort(withDraws(drawWith({ yearFrom: 2010 })), more)).toEqual([])
  })

  test.each([
    ['at the end', withDraws(drawWith({ yearTo: 2012 })), '2013-null'],
    ['at the beginning', withDraws(drawWith({ yearFrom: 2013 })), 'null-2012'],
  ])('years that lose their figure %s are told, figure by figure', (_, after, years) => {
    expect(inShort(withDraws(drawWith()), after)).toEqual([
      `/modes/0/draws ${years} lowW 1->null`,
      `/modes/0/draws ${years} typicalW 2->null`,
      `/modes/0/draws ${years} highW 4->null`,
    ])
  })

  test('a mode that goes takes its figures with it, and one that comes had none', () => {
    const off = modeWith({ mode: 'off', defaultHoursPerWeek: 10 })
    const [one, two] = [categoryWith(), categoryWith({ modes: [off, modeWith()] })]
    expect(inShort(one, two)).toEqual([])
    expect(inShort(two, one)).toEqual([
      '/modes null-null lowW 1->null',
      '/modes null-null typicalW 2->null',
      '/modes null-null highW 4->null',
    ])
  })

  test('the same mode is found wherever it stands', () => {
    const off = modeWith({ mode: 'off', defaultHoursPerWeek: 10, draws: [drawWith({ highW: 2 })] })
    const large = { ...off, draws: [drawWith({ highW: 90 })] }
    expect(
      inShort(categoryWith({ modes: [off, modeWith()] }), categoryWith({ modes: [modeWith(), large] })),
    ).toEqual(['/modes/1/draws/0/highW null-null highW 2->90'])
  })
})

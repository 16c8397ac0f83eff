import { describe, expect, test } from 'vitest'
import type { Category, Provenance, TypicalDraw } from '../../../src/core/catalogue/category.ts'
import { checkCategory } from '../../../src/core/catalogue/checkCategory.ts'
import { categoryWith, drawWith, modeWith } from './sampleCategory.ts'

const found = (category: Category) => checkCategory(category).map(({ pointer, code }) => `${pointer} ${code}`)
const withDraws = (...draws: TypicalDraw[]) => categoryWith({ modes: [modeWith({ draws })] })
const withYears = (...years: [number | null, number | null][]) =>
  withDraws(...years.map(([yearFrom, yearTo]) => drawWith({ yearFrom, yearTo })))
const withProvenance = (provenance: Provenance) => withDraws(drawWith({ provenance }))

test('a category that follows every rule has no fault', () => {
  expect(checkCategory(categoryWith())).toEqual([])
})

test('pointers stand under the base that the caller gives', () => {
  const category = withDraws(drawWith({ lowW: 3 }))
  expect(checkCategory(category, '/items/7')[0]?.pointer).toBe('/items/7/modes/0/draws/0/lowW')
})

describe('figures stand in order', () => {
  test('a low above the typical figure is a fault at the low one, with both values and the unit', () => {
    expect(checkCategory(withDraws(drawWith({ lowW: 3 })))).toEqual([
      {
        pointer: '/modes/0/draws/0/lowW',
        code: 'range-out-of-order',
        message: 'lowW (3 W) must not be above typicalW (2 W).',
      },
    ])
  })

  test('a high below the typical figure is a fault at the high one', () => {
    expect(found(withDraws(drawWith({ highW: 1.5 })))).toEqual(['/modes/0/draws/0/highW range-out-of-order'])
  })

  test('low = typical = high is an exact value and no fault', () => {
    expect(found(withDraws(drawWith({ lowW: 2, typicalW: 2, highW: 2 })))).toEqual([])
  })

  test('a power factor range out of order is a fault at each end that is', () => {
    expect(found(categoryWith({ powerFactor: { low: 0.5, typical: 0.4, high: 0.3 } }))).toEqual([
      '/powerFactor/low range-out-of-order',
      '/powerFactor/high range-out-of-order',
    ])
  })
})

describe('modes', () => {
  test('each mode may be listed once; every further one is a fault', () => {
    const modes = [
      modeWith({ defaultHoursPerWeek: 1 }),
      modeWith({ defaultHoursPerWeek: 1 }),
      modeWith({ mode: 'off' }),
    ]
    expect(found(categoryWith({ modes }))).toEqual(['/modes/1/mode mode-repeated'])
  })

  test('hours of all modes may fill the week to the last, also where fractions leave a rounding error', () => {
    const modes = (['off', 'standby', 'idle'] as const).map((mode) =>
      modeWith({ mode, defaultHoursPerWeek: 56 + 1e-11 }),
    )
    expect(found(categoryWith({ modes }))).toEqual([])
  })

  test('more hours than a week has are a fault that states their sum', () => {
    const modes = [
      modeWith({ defaultHoursPerWeek: 100 }),
      modeWith({ mode: 'off', defaultHoursPerWeek: 68.5 }),
    ]
    expect(checkCategory(categoryWith({ modes }))).toEqual([
      {
        pointer: '/modes',
        code: 'too-many-hours',
        message: 'The hours of all modes add up to 168.5 h a week, but a week has 168 h.',
      },
    ])
  })
})

describe('years of manufacture', () => {
  test('spans that follow each other without gap are no fault, in whatever order they are listed', () => {
    expect(found(withYears([null, 2009], [2010, 2012], [2013, null]))).toEqual([])
    expect(found(withYears([2013, null], [null, 2009], [2010, 2012]))).toEqual([])
  })

  test('one draw may be open at both ends, and spans may end before today or begin after long ago', () => {
    expect(found(withYears([null, null]))).toEqual([])
    expect(found(withYears([1990, 1999], [2000, 2005]))).toEqual([])
    expect(found(withYears([2010, 2010], [2011, 2011]))).toEqual([])
  })

  test('years upside down are a fault', () => {
    expect(found(withYears([2013, 2010]))).toEqual(['/modes/0/draws/0/yearTo years-upside-down'])
  })

  test('spans that share a year overlap', () => {
    expect(found(withYears([null, 2010], [2010, null]))).toEqual(['/modes/0/draws/1/yearFrom years-overlap'])
  })

  test('a draw that is open at both ends stands alone', () => {
    expect(found(withYears([null, null], [null, null]))).toEqual(['/modes/0/draws/1/yearFrom years-overlap'])
    expect(found(withYears([2010, 2012], [null, null]))).toEqual(['/modes/0/draws/0/yearFrom years-overlap'])
  })

  test('a short span within a long one does not hide that a third overlaps with the long one', () => {
    expect(found(withYears([2000, 2020], [2001, 2002], [2010, null]))).toEqual([
      '/modes/0/draws/1/yearFrom years-overlap',
      '/modes/0/draws/2/yearFrom years-overlap',
    ])
  })

  test('a hole between two spans is a fault that names the years without a figure', () => {
    const faults = checkCategory(withYears([null, 2009], [2013, null]))
    expect(faults.map(({ code }) => code)).toEqual(['years-hole'])
    expect(faults[0]?.message).toContain('2010 to 2012')
  })

  test('each mode has years of its own', () => {
    const modes = [
      modeWith({ draws: [drawWith({ yearTo: 2009 }), drawWith({ yearFrom: 2010 })] }),
      modeWith({ mode: 'off', defaultHoursPerWeek: 1 }),
    ]
    expect(found(categoryWith({ modes }))).toEqual([])
  })
})

describe('provenance', () => {
  const at = '/modes/0/draws/0/provenance'

  test.each<Provenance>([
    { kind: 'sample', citation: null, n: null },
    { kind: 'published', citation: 'Some report, table 3', n: null },
    { kind: 'published', citation: 'Some report, table 3', n: 25 },
    { kind: 'programme', citation: null, n: 8 },
    { kind: 'programme', citation: 'Retrofit programme, second round', n: 8 },
  ])('complete provenance is no fault: %o', (provenance) => {
    expect(found(withProvenance(provenance))).toEqual([])
  })

  test('a published figure needs a citation', () => {
    expect(found(withProvenance({ kind: 'published', citation: null, n: 4 }))).toEqual([
      `${at}/citation citation-missing`,
    ])
  })

  test('a blank citation is none', () => {
    expect(found(withProvenance({ kind: 'published', citation: '  ', n: null }))).toEqual([
      `${at}/citation citation-blank`,
    ])
  })

  test('a programme figure needs its n', () => {
    expect(found(withProvenance({ kind: 'programme', citation: null, n: null }))).toEqual([
      `${at}/n n-missing`,
    ])
  })

  test('an invented figure has neither citation nor n', () => {
    expect(found(withProvenance({ kind: 'sample', citation: 'Some report', n: 3 }))).toEqual([
      `${at}/citation sample-with-citation`,
      `${at}/n sample-with-n`,
    ])
  })
})

describe('aliases', () => {
  test('aliases that look-up cannot tell apart are a fault', () => {
    expect(found(categoryWith({ aliases: ['Bubble light', 'bubble-LIGHT', 'glow lamp'] }))).toEqual([
      '/aliases/1 alias-repeated',
    ])
  })

  test('an alias must not repeat the code or the name', () => {
    expect(found(categoryWith({ name: 'Wax lamp', aliases: ['lava lamp', 'WAX LAMP'] }))).toEqual([
      '/aliases/0 alias-repeats-name',
      '/aliases/1 alias-repeats-name',
    ])
  })

  test('an alias without letter or digit can never be found', () => {
    expect(found(categoryWith({ aliases: ['!?'] }))).toEqual(['/aliases/0 alias-empty'])
  })
})

test('every fault is named at once', () => {
  const category = categoryWith({
    aliases: ['lava lamp'],
    powerFactor: { low: 0.5, typical: 0.4, high: 0.6 },
    modes: [
      modeWith({ draws: [drawWith({ lowW: 3, yearTo: 2010 }), drawWith({ yearFrom: 2012 })] }),
      modeWith({ draws: [drawWith({ provenance: { kind: 'programme', citation: null, n: null } })] }),
    ],
  })
  expect(found(category)).toEqual([
    '/aliases/0 alias-repeats-name',
    '/powerFactor/low range-out-of-order',
    '/modes too-many-hours',
    '/modes/1/mode mode-repeated',
    '/modes/0/draws/0/lowW range-out-of-order',
    '/modes/0/draws/1/yearFrom years-hole',
    '/modes/1/draws/0/provenance/n n-missing',
  ])
})

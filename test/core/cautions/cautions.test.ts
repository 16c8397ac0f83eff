import { describe, expect, test } from 'vitest'
import { CAUTION_PLACES } from '../../../src/core/cautions/caution.ts'
import { cautionsFor } from '../../../src/core/cautions/cautions.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { cautions } from '../../helpers/cautions.ts'

describe('cautionsFor', () => {
  test('gives those of one kind of answer, in the order in which they are kept, without marks', () => {
    expect(cautionsFor(cautions, 'reading-current')).toEqual([
      { code: 'a-warning-for-all', message: 'Open nothing.', source: 'A norm, chapter 3' },
      {
        code: 'a-warning-for-clamps',
        message: 'Clamp one conductor.',
        source: 'common practice, no source',
      },
    ])
    expect(cautionsFor(cautions, 'reading-declared')).toEqual([])
  })
})

describe('the cautions that are shipped', async () => {
  const { cautions: shipped } = await readSeed()
  const codesOf = (place: (typeof CAUTION_PLACES)[number]) =>
    cautionsFor(shipped, place).map(({ code }) => code)

  test('keep the six codes that estimates have always carried, in their order', () => {
    expect(codesOf('estimate')).toEqual([
      'no-open-cords-or-panels',
      'purpose-made-splitter-only',
      'meter-category-rating',
      'power-strip-load',
      'never-switch-off',
      'defer-to-manufacturer',
    ])
  })

  test.each(CAUTION_PLACES)('defer to manufacturer, codes and licensed practice at %s', (place) => {
    expect(codesOf(place)).toContain('defer-to-manufacturer')
  })

  test.each(['savings', 'report', 'verification', 'base-load', 'population', 'reading-energy'] as const)(
    'say at %s what must never be switched off',
    (place) => {
      expect(codesOf(place)).toContain('never-switch-off')
    },
  )

  test('say at readings of current alone how to clamp one conductor', () => {
    const places = CAUTION_PLACES.filter((place) => place.startsWith('reading-'))
    expect(places.filter((place) => codesOf(place).includes('purpose-made-splitter-only'))).toEqual([
      'reading-current',
    ])
  })

  test('have a mark exactly where they have a source, and never show it', () => {
    for (const { source, mark, message } of shipped) {
      expect(mark === null).toBe(source === 'common practice, no source')
      expect(`${message} ${source}`).not.toMatch(/\((V2?|C|M)\)/)
    }
  })
})

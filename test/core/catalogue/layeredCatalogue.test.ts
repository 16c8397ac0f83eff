import { describe, expect, it } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { findCategory, nearestCategories } from '../../../src/core/catalogue/findCategory.ts'
import { layeredCatalogue } from '../../../src/core/catalogue/layeredCatalogue.ts'
import { layerOf } from '../../../src/core/catalogue/layerOf.ts'
import { type OverlayState, overlayOf } from '../../../src/core/catalogue/overlay.ts'
import { overlayFaults } from '../../../src/core/catalogue/overlayFaults.ts'
import { revisionsUsed } from '../../../src/core/catalogue/revisionsUsed.ts'
import { aCategory } from '../../stores/aCategory.ts'

const shared = catalogueOf(
  7,
  [
    aCategory('freezer', { aliases: [], keepPowered: { reason: 'refrigeration', note: 'Food spoils.' } }),
    aCategory('radio', { aliases: ['wireless'] }),
    aCategory('television', { aliases: [] }),
  ],
  new Map([
    ['freezer', 1],
    ['radio', 4],
    ['television', 7],
  ]),
)
const state = (code: string, revision: number, changes = {}): OverlayState => ({
  code,
  category: aCategory(code, { aliases: [], ...changes }),
  revision,
})
const over = (...states: OverlayState[]) => layeredCatalogue(shared, overlayOf('ours', 9, states))

describe('an overlay over the shared catalogue', () => {
  it('replaces the category of the same code and stands beside the others, in the order of the codes', () => {
    const layered = over(state('radio', 2, { name: 'Ours' }), state('boiler', 5))
    expect([...layered.categories.keys()]).toEqual(['boiler', 'freezer', 'radio', 'television'])
    expect(layered.categories.get('radio')?.name).toBe('Ours')
    expect(layered.categories.get('television')).toBe(shared.categories.get('television'))
    expect([...layered.categories.keys()].map((code) => layerOf(layered, code))).toEqual([
      'organisation',
      'shared',
      'organisation',
      'shared',
    ])
    expect([...layered.changedIn]).toEqual(
      expect.arrayContaining([
        ['boiler', 5],
        ['radio', 2],
        ['television', 7],
      ]),
    )
    expect(revisionsUsed(layered)).toEqual({ catalogueRevision: 7, overlayRevision: 9 })
  })

  it('is the shared catalogue itself where nothing was ever laid, and names its revision where all is taken away', () => {
    expect(layeredCatalogue(shared, overlayOf('ours', 0))).toBe(shared)
    const removed = over({ code: 'radio', category: null, revision: 9 })
    expect([...removed.categories.values()]).toEqual([...shared.categories.values()])
    expect(revisionsUsed(removed).overlayRevision).toBe(9)
    expect(revisionsUsed(shared).overlayRevision).toBe(0)
  })

  it('never lets a device go unpowered that must stay powered for all, but may give a reason of its own', () => {
    const bare = over(state('freezer', 1, { defaultQuantity: 3 })).categories.get('freezer')
    expect([bare?.defaultQuantity, bare?.keepPowered?.reason]).toEqual([3, 'refrigeration'])
    const medical = { reason: 'medical', note: 'Insulin.' } as const
    expect(
      over(state('freezer', 1, { keepPowered: medical })).categories.get('freezer')?.keepPowered,
    ).toEqual(medical)
    const own = state('freezer', 1).category!
    expect(overlayFaults(own, shared.categories.get('freezer'))).toMatchObject([
      { pointer: '/keepPowered', code: 'keep-powered-fixed' },
    ])
    expect(overlayFaults({ ...own, keepPowered: medical }, shared.categories.get('freezer'))).toEqual([])
    expect(overlayFaults(own, undefined)).toEqual([])
  })

  it('is found by its own names first, also where the shared catalogue got the same name later', () => {
    const layered = over(state('aaa', 1, { name: 'Wireless' }), state('zzz', 2, { name: 'Invented radio' }))
    expect(findCategory(layered, 'wireless')?.code).toBe('aaa')
    expect(findCategory(layered, 'invented radio')?.code).toBe('zzz')
    expect(findCategory(layered, 'radio')?.code).toBe('radio')
    expect(findCategory(shared, 'wireless')?.code).toBe('radio')
    expect(nearestCategories(layered, 'zzzz')[0]?.code).toBe('zzz')
  })

  it('changes neither the shared catalogue nor the overlay', () => {
    const before = JSON.stringify([...shared.categories])
    over(state('freezer', 1), state('radio', 2))
    expect(JSON.stringify([...shared.categories])).toBe(before)
    expect(shared.overlay).toBeUndefined()
  })
})

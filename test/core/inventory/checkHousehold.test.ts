import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import type { EstimateSettings } from '../../../src/core/estimate/settings.ts'
import { checkHousehold } from '../../../src/core/inventory/checkHousehold.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'

const catalogue = catalogueOf(1, testCategories)
const grid = testSettings.emissionFactors.get('grid')!
const settings: EstimateSettings = {
  ...testSettings,
  emissionFactors: new Map([
    ['grid', grid],
    ['edge', { ...grid, code: 'edge', regionCode: 'coast', kind: 'marginal' }],
    ['gone', { ...grid, code: 'gone', regionCode: 'valley', retired: true }],
  ]),
}
const faultsOf = (raw: unknown, known = settings) => checkHousehold(raw, catalogue, known)
const found = (raw: unknown, known = settings) =>
  faultsOf(raw, known).map(({ pointer, code }) => `${pointer} ${code}`)
const ofModes = (...modes: unknown[]) => found({ devices: [{ category: 'television', modes }] })

describe('a household', () => {
  test('that names what there is has no fault', () => {
    const devices = [{ id: 'a', category: 'TV' }, { category: 'router' }]
    expect(found({ devices, tariffCode: 'flat', emissionFactorCode: 'grid', annualUseKwh: 3000 })).toEqual([])
  })

  test('of which nothing can be read has no fault of the trade: its shape says so already', () => {
    for (const raw of [null, 'household', [], 7]) expect(found(raw)).toEqual([])
    expect(found({ devices: 'none', meters: 3, emissionFactorFor: 'north' })).toEqual([])
    expect(found({ devices: [null, { category: 5, modes: [{ mode: 'asleep' }, 'x'] }] })).toEqual([])
  })

  test('gives a thing in one way alone', () => {
    const tariff = { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3 }
    expect(found({ tariff, tariffCode: 'flat', emissionFactor: {}, emissionFactorCode: 'grid' })).toEqual([
      '/tariffCode given-twice',
      '/emissionFactorCode given-twice',
    ])
    expect(
      found({
        annualUseKwh: 1,
        monthlyUseKwh: [],
        emissionFactor: {},
        emissionFactorFor: { region: 'grid' },
      }),
    ).toEqual(['/emissionFactorFor given-twice', '/monthlyUseKwh given-twice'])
  })

  test('is told the codes that are in use where it names one that is not there', () => {
    const [tariff, factor] = faultsOf({ tariffCode: 'night', emissionFactorCode: 'moon' })
    expect(tariff).toMatchObject({ pointer: '/tariffCode', code: 'unknown-code' })
    expect(tariff!.message).toBe('There is no tariff "night". Known are: flat.')
    expect(factor!.message).toBe('There is no emissionFactor "moon". Known are: grid, edge.')
  })

  test('has to give what the operator’s default did not stand for yet at its revision', () => {
    const none = { ...settings, tariffs: new Map(), emissionFactors: new Map(), referenceRevision: 0 }
    expect(found({ devices: [] }, none)).toEqual(['/tariffCode required', '/emissionFactorCode required'])
    expect(faultsOf({}, none)[0]!.message).toBe(
      "The operator's tariff flat was not there at revision 0; give one.",
    )
    expect(found({ tariff: {}, emissionFactor: {} }, none)).toEqual([])
  })

  test('gives meters and devices ids of their own; one without has that of its place', () => {
    expect(found({ meters: [{ id: 'm' }, { id: 'm' }, {}, {}], devices: [] })).toEqual([
      '/meters/1/id duplicate-id',
    ])
    const devices = [{ category: 'TV' }, { id: 'device-1', category: 'TV' }]
    expect(found({ devices })).toEqual(['/devices/1/id duplicate-id'])
  })
})

describe('an emission factor by region', () => {
  test('is one of the kind that is asked for, average where none is, and not retired', () => {
    expect(found({ emissionFactorFor: { region: 'grid' } })).toEqual([])
    expect(found({ emissionFactorFor: { region: 'coast', kind: 'marginal' } })).toEqual([])
    for (const choice of [{ region: 'coast' }, { region: 'grid', kind: 'marginal' }, { region: 'valley' }])
      expect(found({ emissionFactorFor: choice })).toEqual(['/emissionFactorFor/region unknown-region'])
    expect(faultsOf({ emissionFactorFor: { region: 'valley' } })[0]!.message).toBe(
      'There is no average emission factor of a region "valley". Known are: grid.',
    )
  })

  test('without a region is left to its shape', () => {
    expect(found({ emissionFactorFor: { year: 2024 } })).toEqual([])
  })
})

describe('a device', () => {
  test('of an unknown category is told the nearest three', () => {
    const [fault] = faultsOf({ devices: [{ category: 'televsion' }] })
    expect(fault).toMatchObject({ pointer: '/devices/0/category', code: 'unknown-category' })
    expect(fault!.message).toContain('television (Television)')
  })

  test('has a mode once', () => {
    expect(ofModes({ mode: 'standby', hoursPerWeek: 1 }, { mode: 'standby', hoursPerWeek: 1 })).toEqual([
      '/devices/0/modes/1/mode mode-twice',
    ])
  })

  test('needs a reading and hours in a mode of which the catalogue has neither', () => {
    const reading = { kind: 'power', watts: 1 }
    expect(ofModes({ mode: 'off' })).toEqual(['/devices/0/modes/0/mode mode-without-figure'])
    expect(ofModes({ mode: 'off', reading })).toEqual(['/devices/0/modes/0/hoursPerWeek required'])
    expect(ofModes({ mode: 'off', reading, hoursPerWeek: 5 })).toEqual([])
  })

  test('reads with a meter that is there, and has its accuracy once', () => {
    const mode = (reading: object) => ({
      devices: [{ category: 'TV', modes: [{ mode: 'standby', reading }] }],
    })
    const pointer = '/devices/0/modes/0/reading/meterId'
    expect(found(mode({ meterId: 'm' }))).toEqual([`${pointer} unknown-meter`])
    expect(found({ meters: [{ id: 'm' }], ...mode({ meterId: 'm' }) })).toEqual([])
    expect(found({ meters: [{ id: 'm' }], ...mode({ meterId: 'm', accuracy: {} }) })).toEqual([
      `${pointer} given-twice`,
    ])
  })

  test('has no more hours than a week, those that the catalogue fills in among them', () => {
    const off = (hoursPerWeek: unknown) => ({ mode: 'off', reading: {}, hoursPerWeek })
    const exceeded = ['/devices/0/modes hours-exceed-week']
    // The catalogue’s standby of a television is 140 h a week.
    expect(ofModes({ mode: 'standby' }, off(28))).toEqual([])
    expect(ofModes({ mode: 'standby' }, off(28.1))).toEqual(exceeded)
    expect(ofModes({ mode: 'standby', hoursPerWeek: 100 }, off(68.1))).toEqual(exceeded)
    expect(ofModes({ mode: 'standby' }, off({ low: 1, typical: 29, high: 40 }))).toEqual(exceeded)
    expect(ofModes({ mode: 'standby' }, off({ low: 1, typical: 28, high: 168 }))).toEqual([])
  })

  test('whose hours can’t be read does not count as if the catalogue had filled them in', () => {
    expect(
      ofModes({ mode: 'standby', hoursPerWeek: 'all' }, { mode: 'off', reading: {}, hoursPerWeek: 168 }),
    ).toEqual([])
  })
})

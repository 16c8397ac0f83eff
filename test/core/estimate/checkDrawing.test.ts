import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { checkDrawing } from '../../../src/core/estimate/checkDrawing.ts'
import { MOST_DRAWN, mostDraws } from '../../../src/core/estimate/drawLimits.ts'
import { estimate } from '../../../src/core/estimate/estimateHousehold.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'
import { estimateOf, oneDevice } from './households.ts'

const [first] = testCategories
/** The test catalogue, with a category of two modes. */
const ofTwoModes = catalogueOf(1, [
  ...testCategories,
  {
    ...first!,
    code: 'two-modes',
    name: 'two modes',
    aliases: [],
    modes: [first!.modes[0]!, { ...first!.modes[0]!, mode: 'off' }],
  },
])
const faultsOf = (raw: unknown) =>
  checkDrawing(raw, ofTwoModes).map(({ pointer, code }) => `${pointer} ${code}`)
const many = (count: number) => Array.from({ length: count }, () => oneDevice({}))

describe('draws and a seed', () => {
  test.each([
    ['no method', {}],
    ['convolution', { method: 'convolution' }],
  ])('are refused with %s, each by name', (_, method) => {
    expect(faultsOf({ ...method, draws: 5_000, seed: 3, devices: many(1) })).toEqual([
      '/draws needs-monte-carlo',
      '/seed needs-monte-carlo',
    ])
    expect(faultsOf({ ...method, seed: 0, devices: many(1) })).toEqual(['/seed needs-monte-carlo'])
  })

  test('are refused in words that say what to do', () => {
    const messages = checkDrawing({ draws: 5_000, seed: 3, devices: many(1) }, ofTwoModes).map(
      ({ message }) => message,
    )
    expect(messages).toEqual([
      'draws has no meaning without method "monte-carlo": give that method, too, or leave draws out.',
      'seed has no meaning without method "monte-carlo": give that method, too, or leave seed out.',
    ])
  })

  test('are not held against a method that there is not: that fault is the schema’s', () => {
    expect(faultsOf({ method: 'guess', draws: 5_000, devices: many(1) })).toEqual([])
  })

  test('may be left out of a Monte Carlo', () => {
    expect(faultsOf({ method: 'monte-carlo', devices: many(1) })).toEqual([])
  })

  test('are nothing to look for in what is no household', () => {
    expect([faultsOf(null), faultsOf([]), faultsOf('monte-carlo')]).toEqual([[], [], []])
  })
})

describe('draws times modes', () => {
  test('may come to the bound and not above it, and the message names the most that fits', () => {
    const drawn = (draws: number) => ({ method: 'monte-carlo', draws, devices: many(50) })
    expect(MOST_DRAWN / 50).toBe(10_000)
    expect(faultsOf(drawn(10_000))).toEqual([])
    expect(faultsOf(drawn(10_001))).toEqual(['/draws too-many-draws'])
    expect(checkDrawing(drawn(10_001), ofTwoModes)[0]!.message).toContain('at most 10000 draws')
  })

  test('count each mode that is given, and those of the catalogue where none is', () => {
    const two = { category: 'amplifier', modes: [{ mode: 'off' }, { mode: 'standby' }] }
    const drawn = (device: object, count: number, draws: number) =>
      faultsOf({ method: 'monte-carlo', draws, devices: Array.from({ length: count }, () => device) })
    expect(drawn(two, 50, 5_000)).toEqual([])
    expect(drawn(two, 50, 5_001)).toEqual(['/draws too-many-draws'])
    expect(drawn({ category: 'two modes' }, 50, 5_000)).toEqual([])
    expect(drawn({ category: 'two modes' }, 50, 5_001)).toEqual(['/draws too-many-draws'])
  })

  test('count nothing for a category that there is not, which is a fault of its own', () => {
    const devices = Array.from({ length: 100 }, () => ({ category: 'no such thing' }))
    expect(faultsOf({ method: 'monte-carlo', draws: 100_000, devices })).toEqual([])
  })

  test('are counted of the 500 devices alone that a request may have', () => {
    const devices = many(600)
    expect(faultsOf({ method: 'monte-carlo', draws: 1_000, devices })).toEqual([])
  })

  test('leave no room for the least draws above 500 modes, with or without a number of draws', () => {
    const device = { category: 'amplifier', modes: [{ mode: 'off' }, { mode: 'standby' }] }
    const drawn = (count: number, draws?: number) =>
      faultsOf({ method: 'monte-carlo', draws, devices: Array.from({ length: count }, () => device) })
    expect([drawn(250), drawn(250, 1_000)]).toEqual([[], []])
    expect([drawn(251), drawn(251, 1_000)]).toEqual([['/method too-many-modes'], ['/method too-many-modes']])
    const devices = Array.from({ length: 251 }, () => device)
    expect(checkDrawing({ method: 'monte-carlo', devices }, ofTwoModes)[0]!.message).toContain(
      'at most 500 modes of devices together, not 502. Leave it out',
    )
  })
})

describe('a Monte Carlo without a number of draws', () => {
  test('takes as many as its modes leave room for, and says how many', () => {
    const versions = [1, 5, 20].map(
      (count) => estimateOf(many(count), { method: 'monte-carlo' }).used.methodVersion,
    )
    expect(versions.map((version) => version.split('+')[1])).toEqual([
      'monte-carlo.100000.1',
      'monte-carlo.100000.1',
      'monte-carlo.25000.1',
    ])
    expect([mostDraws(5), mostDraws(6), mostDraws(500)]).toEqual([100_000, 83_333, 1_000])
  })

  test('counts the modes of the catalogue where a device names none', () => {
    const devices = Array.from({ length: 10 }, () => ({ category: 'two modes' }))
    const { used } = estimate({ devices, method: 'monte-carlo' }, ofTwoModes, testSettings)
    expect(used.methodVersion).toContain('+monte-carlo.25000.')
  })
})

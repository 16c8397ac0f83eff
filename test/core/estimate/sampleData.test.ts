import { expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { estimate } from '../../../src/core/estimate/estimateHousehold.ts'
import type { DeviceMode, Household } from '../../../src/core/inventory/household.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'

const catalogue = catalogueOf(1, testCategories)
const priced: Omit<Household, 'devices'> = {
  tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3 },
  emissionFactor: { kgCo2ePerKwh: 0.25 },
}
const answer = (category: string, mode: DeviceMode) =>
  estimate({ ...priced, devices: [{ category, modes: [mode] }] }, catalogue, testSettings)

const wattmeter = { kind: 'power', watts: 2 } as const
const clamp = { kind: 'current', amperes: 0.02 } as const

test.each<[string, DeviceMode, boolean]>([
  ['a reading of power over stated hours', { mode: 'standby', hoursPerWeek: 100, reading: wattmeter }, false],
  ['a reading over the category’s hours', { mode: 'standby', reading: wattmeter }, true],
  [
    'a clamp reading with the category’s power factor',
    { mode: 'standby', hoursPerWeek: 100, reading: clamp },
    true,
  ],
  [
    'a clamp reading with a power factor that was read',
    { mode: 'standby', hoursPerWeek: 100, reading: { ...clamp, powerFactor: 0.4 } },
    false,
  ],
  ['a typical draw', { mode: 'standby', hoursPerWeek: 100 }, true],
])('%s of an invented category', (_, mode, sampleData) => {
  const { sampleData: total, devices, warnings } = answer('amplifier', mode)
  expect(total).toBe(sampleData)
  expect(devices[0]!.sampleData).toBe(sampleData)
  expect(warnings.some(({ code }) => code === 'sample-data')).toBe(sampleData)
})

test('an invented price alone makes the answer hold sample data', () => {
  const device = {
    category: 'amplifier',
    modes: [{ mode: 'standby', hoursPerWeek: 100, reading: wattmeter }],
  } as const
  const settings = { ...testSettings }
  const { sampleData, devices, warnings } = estimate(
    { emissionFactor: { kgCo2ePerKwh: 0.25 }, devices: [device] },
    catalogue,
    settings,
  )
  expect(sampleData).toBe(true)
  expect(devices[0]!.sampleData).toBe(false)
  expect(warnings.map(({ code }) => code)).toEqual(['sample-price'])
})

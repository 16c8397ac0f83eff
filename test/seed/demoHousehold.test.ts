import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { catalogueOf } from '../../src/core/catalogue/catalogue.ts'
import { findCategory } from '../../src/core/catalogue/findCategory.ts'
import { readSeed } from '../../src/readSeed.ts'
import { householdSchema } from '../../src/schemas/household.ts'

const text = readFileSync(new URL('../../seed/demo-household.json', import.meta.url), 'utf8')
const household = householdSchema.parse(JSON.parse(text))
const { categories, emissionFactors } = await readSeed()
const catalogue = catalogueOf(1, categories)
const readings = household.devices.flatMap(
  ({ modes }) => modes?.flatMap(({ reading }) => reading ?? []) ?? [],
)

test('the invented household has at least ten devices of known categories, in modes that these have', () => {
  expect(household.devices.length).toBeGreaterThanOrEqual(10)
  for (const device of household.devices) {
    const category = findCategory(catalogue, device.category)
    expect([device.category, category !== null]).toEqual([device.category, true])
    const known = category?.modes.map(({ mode }) => mode) ?? []
    for (const { mode } of device.modes ?? []) expect(known).toContain(mode)
  }
})

test('two devices are read with one wattmeter, one with a clamp meter and no power factor, one is declared', () => {
  expect(readings.map(({ kind }) => kind).toSorted()).toEqual(['current', 'declared', 'energy', 'power'])
  const meters = readings.flatMap((reading) => ('meterId' in reading ? reading.meterId : []))
  expect(meters.toSorted()).toEqual(['clamp-meter', 'plug-in-wattmeter', 'plug-in-wattmeter'])
  const clamped = readings.find((reading) => reading.kind === 'current')
  expect(clamped).toMatchObject({ kind: 'current', loops: 10, meterId: 'clamp-meter' })
  expect(clamped).not.toHaveProperty('powerFactor')
})

test('supply, price, annual use and grid are given, and the grid is one that the service knows', () => {
  expect(household.supply).toEqual({ volts: 230, tolerancePercent: 6, hertz: 50 })
  expect(household.tariff).toMatchObject({ kind: 'flat', currency: 'EUR' })
  expect(household.annualUseKwh).toBeGreaterThan(0)
  expect(emissionFactors.has(household.emissionFactorCode ?? '')).toBe(true)
})

test('it shows a range of hours, several of one device, devices assumed entirely, and one that must stay powered', () => {
  const hours = household.devices.flatMap(({ modes }) => modes?.map(({ hoursPerWeek }) => hoursPerWeek) ?? [])
  expect(hours.filter((each) => typeof each === 'object')).toHaveLength(1)
  expect(household.devices.some(({ quantity }) => (quantity ?? 1) > 1)).toBe(true)
  expect(household.devices.some(({ modes }) => modes === undefined)).toBe(true)
  expect(household.devices.some(({ category }) => findCategory(catalogue, category)?.keepPowered)).toBe(true)
})

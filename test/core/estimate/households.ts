import fc from 'fast-check'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { MODES } from '../../../src/core/catalogue/category.ts'
import type { Estimate } from '../../../src/core/estimate/estimate.ts'
import { estimate } from '../../../src/core/estimate/estimateHousehold.ts'
import type { Device, DeviceMode, Household } from '../../../src/core/inventory/household.ts'
import type { Reading } from '../../../src/core/readings/reading.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'

export const catalogue = catalogueOf(1, testCategories)

/** What an invented household with a price and a factor of its own is estimated at. */
export const estimateOf = (devices: readonly Device[], more: Partial<Household> = {}): Estimate =>
  estimate(
    {
      tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3 },
      emissionFactor: { kgCo2ePerKwh: 0.25 },
      devices,
      ...more,
    },
    catalogue,
    testSettings,
  )

/** One device of the category in standby. */
export const oneDevice = (mode: Partial<DeviceMode>, more: Partial<Device> = {}): Device => ({
  category: 'amplifier',
  modes: [{ mode: 'standby', hoursPerWeek: 100, ...mode }],
  ...more,
})

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** Low, typical and high in order. */
export const ranges = (min: number, max: number) =>
  fc.tuple(between(min, max), between(min, max), between(min, max)).map((three) => {
    const [low, typical, high] = three.toSorted((a, b) => a - b) as [number, number, number]
    return { low, typical, high }
  })

const accuracies = fc.record({
  percentOfReading: between(0, 5),
  counts: fc.integer({ min: 0, max: 5 }),
  resolution: fc.constantFrom(0.001, 0.01, 0.1),
})

const powerFactors = fc.oneof(between(0.1, 1), ranges(0.1, 1), fc.constant(undefined))

/** Readings of every kind that an assessor takes with a meter or off a label. */
export const readings: fc.Arbitrary<Reading> = fc.oneof(
  fc.record({ kind: fc.constant('power' as const), watts: between(0, 50), accuracy: accuracies }),
  fc.record({
    kind: fc.constant('energy' as const),
    wattHours: between(0, 500),
    durationHours: between(1, 48),
    accuracy: accuracies,
  }),
  fc
    .record({
      kind: fc.constant('current' as const),
      amperes: between(0, 0.5),
      accuracy: accuracies,
      powerFactor: powerFactors,
    })
    .map(withoutUndefined),
  fc
    .record({
      kind: fc.constant('apparent-power' as const),
      voltAmperes: between(0, 60),
      powerFactor: powerFactors,
    })
    .map(withoutUndefined),
  fc.record({ kind: fc.constant('declared' as const), watts: between(0, 10) }),
)

function withoutUndefined(reading: object): Reading {
  return Object.fromEntries(
    Object.entries(reading).filter(([, value]) => value !== undefined),
  ) as unknown as Reading
}

const modes = fc
  .record({
    hoursPerWeek: fc.oneof(between(0, 80), ranges(0, 80)),
    reading: fc.option(readings, { nil: undefined }),
  })
  .map(({ reading, hoursPerWeek }) => ({ hoursPerWeek, ...(reading && { reading }) }))

/** Devices of one or two modes; the catalogue knows standby, the other needs a reading. */
export const devices: fc.Arbitrary<Device> = fc
  .record({
    category: fc.constantFrom('amplifier', 'television', 'set-top-box'),
    quantity: fc.integer({ min: 1, max: 4 }),
    standby: modes,
    other: fc.option(fc.tuple(fc.constantFrom(...MODES.filter((mode) => mode !== 'standby')), readings), {
      nil: undefined,
    }),
  })
  .map(({ category, quantity, standby, other }) => ({
    category,
    quantity,
    modes: [
      { mode: 'standby' as const, ...standby },
      ...(other ? [{ mode: other[0], hoursPerWeek: 40, reading: other[1] }] : []),
    ],
  }))

export const households = fc.array(devices, { minLength: 1, maxLength: 8 })

import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import type { Category, CategoryMode } from '../../src/core/catalogue/category.ts'
import type { Device, DeviceMode, Household } from '../../src/core/inventory/household.ts'
import type { Reading } from '../../src/core/readings/reading.ts'

/** Numbers of one seed, so that every run of the bench sends the same households. */
function chanceOf(seed: number) {
  const generator = xoroshiro128plus(seed)
  const between = (low: number, high: number, digits = 2) =>
    Number((low + uniformFloat64(generator) * (high - low)).toFixed(digits))
  return {
    between,
    happens: (probability: number) => uniformFloat64(generator) < probability,
    oneOf: <T>(choices: readonly T[]): T => choices[uniformInt(generator, 0, choices.length - 1)]!,
    whole: (low: number, high: number) => uniformInt(generator, low, high),
  }
}
type Chance = ReturnType<typeof chanceOf>

/** As an assessor leaves a visit: most figures assumed, some read with a wattmeter or a clamp meter, a few off a label. */
function invented(chance: Chance): Reading | undefined {
  if (chance.happens(0.6)) return undefined
  const watts = chance.between(0.2, 12)
  return chance.oneOf<Reading>([
    { kind: 'power', watts, meterId: 'm1' },
    {
      kind: 'energy',
      wattHours: chance.between(1, 300),
      durationHours: chance.between(2, 48),
      meterId: 'm1',
    },
    { kind: 'current', amperes: chance.between(0.01, 0.3, 3) },
    { kind: 'apparent-power', voltAmperes: watts * 2, powerFactor: chance.between(0.3, 0.9) },
    { kind: 'declared', watts },
  ])
}

function inventedMode({ mode, defaultHoursPerWeek }: CategoryMode, chance: Chance): DeviceMode {
  const typical = Math.min(defaultHoursPerWeek, chance.between(0, defaultHoursPerWeek, 1))
  const hoursPerWeek = chance.happens(0.3) ? { low: typical / 2, typical, high: typical } : typical
  const reading = invented(chance)
  return { mode, hoursPerWeek, ...(reading && { reading }) }
}

function inventedDevice(categories: readonly Category[], index: number, chance: Chance): Device {
  const category = chance.oneOf(categories)
  const modes = chance.happens(0.25) ? undefined : category.modes.map((mode) => inventedMode(mode, chance))
  return {
    id: `d${index + 1}`,
    category: category.code,
    quantity: chance.oneOf([1, 1, 1, 2, 4]),
    year: chance.whole(1998, 2026),
    ...(modes && { modes }),
  }
}

/** Households that differ in every figure, so that nothing can answer one of them from what it computed for another. */
export function inventHouseholds(
  count: number,
  devices: number,
  categories: readonly Category[],
): Household[] {
  const chance = chanceOf(20_261)
  const inUse = categories.filter(({ retired }) => !retired)
  return Array.from({ length: count }, () => ({
    tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: chance.between(0.1, 0.5, 4) },
    emissionFactor: { kgCo2ePerKwh: chance.between(0.02, 0.8, 3), gridLoss: 0.05 },
    meters: [{ id: 'm1', percentOfReading: chance.between(0.5, 3), counts: 3, resolution: 0.01 }],
    devices: Array.from({ length: devices }, (_, index) => inventedDevice(inUse, index, chance)),
  }))
}

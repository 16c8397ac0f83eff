import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import type { Range } from '../../../src/core/catalogue/category.ts'
import { normalQuantile } from '../../../src/core/quantity/normal.ts'
import type { Meter } from '../../../src/core/readings/reading.ts'
import type { VerificationRequest, Visit } from '../../../src/core/verification/verification.ts'

const DRAWS = 100_000
const Z95 = normalQuantile(0.95)

/** What the oracle has to know of the catalogue and the settings. */
export interface World {
  readonly draw: Range
  readonly powerFactor: Range
  readonly volts: number
  readonly tolerance: number
  readonly weeksPerYear: number
}

/**
 * The oracle: mean and 90 % interval of what was saved, kWh/yr, by drawing every quantity of both visits and going
 * through the request by its own formulas. Each quantity has a name; one of one name is drawn once for both visits.
 * Devices of one mode each, with all hours given; assumed, declared, or read as power or current.
 * @param isShared false gives each visit quantities of its own: what leaving out the correlation would say
 */
export function drawnSaving(
  { before, after }: Pick<VerificationRequest, 'before' | 'after'>,
  world: World,
  isShared = true,
): { readonly expected: number; readonly low: number; readonly high: number } {
  const generator = xoroshiro128plus(0x5a7e)
  const uniform = () => (generator.next() >>> 0) / 0x1_0000_0000
  for (let i = 0; i < 50; i++) uniform()
  const saved = Float64Array.from({ length: DRAWS }, () => {
    const known = new Map<string, number>()
    const of = (name: string) => {
      const value = known.get(name) ?? uniform()
      known.set(name, value)
      return value
    }
    const energy = (visit: Visit, when: string) =>
      energyOf(visit, when, (name) => of(isShared ? name : `${when} ${name}`), of, world)
    return energy(before, 'before') - energy(after, 'after')
  }).sort()
  return {
    expected: saved.reduce((sum, value) => sum + value, 0) / DRAWS,
    low: saved[Math.floor(0.05 * DRAWS)]!,
    high: saved[Math.floor(0.95 * DRAWS)]!,
  }
}

type Uniform = (name: string) => number

function energyOf(visit: Visit, when: string, shared: Uniform, own: Uniform, world: World): number {
  const meters = new Map(visit.meters?.map((meter) => [meter.id, meter]))
  return visit.devices.reduce((sum, { id, quantity = 1, modes }) => {
    const [{ hoursPerWeek, reading }] = modes as [NonNullable<typeof modes>[number]]
    const hours =
      typeof hoursPerWeek === 'number'
        ? hoursPerWeek
        : triangle(hoursPerWeek!, shared(`hours ${id} ${JSON.stringify(hoursPerWeek)}`))
    const shown = (value: number, meterId: string) => {
      const { percentOfReading, counts, resolution } = meters.get(meterId) as Extract<
        Meter,
        { percentOfReading: number }
      >
      const gain = (percentOfReading / 100) * (2 * shared(`gain ${meterId}`) - 1)
      return Math.max(0, value * (1 + gain) + counts * resolution * (2 * own(`counts ${id} ${when}`) - 1))
    }
    const power = () => {
      if (!reading)
        return Array.from({ length: quantity }, (_, i) => draw(world.draw, shared(`draw ${id} ${i}`))).reduce(
          (all, one) => all + one,
          0,
        )
      if (reading.kind === 'declared') return quantity * reading.watts * (0.5 + 0.5 * shared(`label ${id}`))
      if (reading.kind === 'power') return quantity * shown(reading.watts, reading.meterId!)
      if (reading.kind !== 'current') throw new Error(`The oracle does not know ${reading.kind}.`)
      const volts = world.volts * (1 + world.tolerance * (2 * shared('volts') - 1))
      const factor = triangle(world.powerFactor, shared(`factor ${id}`))
      return (quantity * volts * factor * shown(reading.amperes, reading.meterId!)) / (reading.loops ?? 1)
    }
    return sum + (power() * hours * world.weeksPerYear) / 1000
  }, 0)
}

function triangle({ low: a, typical: c, high: b }: Range, p: number): number {
  return p < (c - a) / (b - a)
    ? a + Math.sqrt(p * (b - a) * (c - a))
    : b - Math.sqrt((1 - p) * (b - a) * (b - c))
}

function draw({ low, typical, high }: Range, p: number): number {
  const z = normalQuantile(p)
  return typical * Math.exp((z * Math.log(z < 0 ? typical / low : high / typical)) / Z95)
}

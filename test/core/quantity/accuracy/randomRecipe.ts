import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import type { Figure, Product, Recipe } from './recipe.ts'

/** How the households of a check are made up; the rest is left to chance. */
const MOST_DEVICES = 40
const COVERAGES = [0.5, 0.9, 0.9, 0.9, 0.99]

/**
 * Invented household number `index`: 1 to 40 devices of one or two modes, assumed (also in numbers), read with a
 * wattmeter or a clamp meter, declared; hours, power factors and prices exact or uncertain. Every tenth has a single
 * device, every third draws that differ up to 27-fold from their typical figure, every eighth a meter that reads power
 * as well as current at the supply's assumed voltage.
 * @param devices how many, where that is not left to chance
 */
export function randomRecipe(index: number, devices?: number): Recipe {
  const generator = xoroshiro128plus(0x5eed + index)
  for (let i = 0; i < 20; i++) generator.next()
  const chance = new Chance(() => (generator.next() >>> 0) / 0x1_0000_0000)
  const count = index % 10 === 0 ? 1 : 1 + Math.floor(MOST_DEVICES * chance.next())
  const kind = { spread: index % 3 === 0 ? 25 : 3, crosses: index % 8 === 0 }
  return {
    devices: Array.from({ length: devices ?? count }, () => deviceOf(chance, kind)),
    voltageHalfWidth: 0.06,
    outer: chance.under(0.25) ? { kind: 'rectangular', middle: 1, halfWidth: 0.2 * chance.next() } : null,
    coverage: chance.among(COVERAGES),
  }
}

class Chance {
  readonly next: () => number
  constructor(next: () => number) {
    this.next = next
  }
  under(probability: number): boolean {
    return this.next() < probability
  }
  between(low: number, high: number): number {
    return low + (high - low) * this.next()
  }
  /** Evenly spread in its logarithm. */
  scale(low: number, high: number): number {
    return low * (high / low) ** this.next()
  }
  among<T>(values: readonly T[]): T {
    return values[Math.floor(this.next() * values.length)]!
  }
}

interface Kind {
  readonly spread: number
  readonly crosses: boolean
}

function deviceOf(chance: Chance, kind: Kind): Product[] {
  const modes = chance.under(0.3) ? 2 : 1
  const quantity = chance.under(0.15) ? chance.among([2, 3, 4]) : 1
  return Array.from({ length: modes }, () => modeOf(chance, kind, quantity))
}

/** Energy of a mode in kWh/yr, from W and hours a week. */
const PER_HOUR = 365 / 7 / 1000

function modeOf(chance: Chance, kind: Kind, quantity: number): Product {
  const hours = hoursOf(chance)
  const origin = chance.next()
  if (origin < 0.55) {
    const draw = drawOf(chance, kind.spread, quantity)
    return { coefficient: PER_HOUR, figures: [draw, hours], reading: null, sharesVoltage: false }
  }
  if (origin < 0.75) {
    const reading = { value: 12 * chance.next() ** 2, gain: 0.03, counts: 0.1, meter: 'wattmeter' }
    return { coefficient: PER_HOUR * quantity, figures: [hours], reading, sharesVoltage: false }
  }
  if (origin < 0.93) {
    const meter = kind.crosses && chance.under(0.5) ? 'wattmeter' : 'clamp'
    const reading = { value: 0.25 * chance.next() ** 2, gain: 0.02, counts: 0.005, meter }
    const factor = powerFactorOf(chance)
    return {
      coefficient: 230 * PER_HOUR * quantity,
      figures: [factor, hours],
      reading,
      sharesVoltage: chance.under(0.8),
    }
  }
  const watts = chance.scale(0.3, 10)
  const declared: Figure = { kind: 'rectangular', middle: 0.75 * watts, halfWidth: 0.25 * watts }
  return { coefficient: PER_HOUR * quantity, figures: [declared, hours], reading: null, sharesVoltage: false }
}

function drawOf(chance: Chance, spread: number, quantity: number): Figure {
  const typical = chance.scale(0.1, 10)
  const [below, above] = [1.2 + spread * chance.next(), 1.2 + spread * chance.next()]
  return { kind: 'draw', low: typical / below, typical, high: typical * above, quantity }
}

function hoursOf(chance: Chance): Figure {
  if (chance.under(0.7)) return { kind: 'exact', value: chance.between(5, 168) }
  const low = chance.between(5, 60)
  const typical = low + chance.between(0, 50)
  return { kind: 'triangular', low, typical, high: typical + chance.between(1, 50) }
}

function powerFactorOf(chance: Chance): Figure {
  if (chance.under(0.2)) return { kind: 'exact', value: chance.between(0.3, 1) }
  const low = chance.between(0.1, 0.4)
  const typical = low + chance.between(0, 0.3)
  return { kind: 'triangular', low, typical, high: typical + chance.between(0.05, 0.25) }
}

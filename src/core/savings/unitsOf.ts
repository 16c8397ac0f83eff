import type { Part } from './part.ts'
import type { PlanHousehold } from './planHousehold.ts'
import type { Unit } from './unitChoices.ts'

/** The household cut into units that no measure ties together, in the order of the inventory. */
export function unitsOf(parts: readonly Part[], { devices }: PlanHousehold): readonly Unit[] {
  const strips = parts.filter(({ outlet }) => outlet !== null)
  const single = parts.filter(({ outlet }) => outlet === null)
  const byKey = new Map<string, number[]>()
  for (const { place, id, device } of devices) {
    const shares = strips.some(({ outlet }) => outlet === device.outlet)
    const key = shares ? `outlet ${device.outlet}` : `device ${id}`
    byKey.set(key, [...(byKey.get(key) ?? []), place])
  }
  return [...byKey.values()]
    .map((places) => ({
      places,
      strips: strips.filter((strip) => strip.places.some((place) => places.includes(place))),
      parts: single.filter((part) => places.includes(part.places[0]!)),
    }))
    .filter((unit) => unit.strips.length + unit.parts.length > 0)
}

import type { Mode } from '../catalogue/category.ts'
import { type ModeTerms, modesOf, modeTerms } from '../estimate/estimateMode.ts'
import type { ResolvedDevice, ResolvedHousehold } from '../estimate/resolveHousehold.ts'
import type { DeviceMode } from '../inventory/household.ts'

/** One mode of a device at one visit. */
export interface ModeAtVisit {
  readonly given: DeviceMode
  readonly terms: ModeTerms
  readonly resolved: ResolvedDevice
}

export interface ModePair {
  readonly mode: Mode
  readonly before: ModeAtVisit | null
  readonly after: ModeAtVisit | null
}

export interface DevicePair {
  readonly id: string
  readonly before: ResolvedDevice | null
  readonly after: ResolvedDevice | null
  /** In both visits, of one category and no two years: the same thing, and not one put in its place. */
  readonly isSame: boolean
  readonly modes: readonly ModePair[]
}

/** Devices by their ids, those of the first visit in its order and then those that only the second has. */
export function matchDevices(before: ResolvedHousehold, after: ResolvedHousehold): DevicePair[] {
  const ids = [...new Set([...before.devices, ...after.devices].map(({ id }) => id))]
  const [first, second] = [before, after].map(({ devices }) => new Map(devices.map((one) => [one.id, one])))
  return ids.map((id) => {
    const [one, other] = [first!.get(id) ?? null, second!.get(id) ?? null]
    const [modesBefore, modesAfter] = [modesAt(one, before), modesAt(other, after)]
    const names = [...new Set([...modesBefore.keys(), ...modesAfter.keys()])]
    return {
      id,
      before: one,
      after: other,
      isSame:
        one !== null &&
        other !== null &&
        one.category.code === other.category.code &&
        !differ(one.device.year, other.device.year),
      modes: names.map((mode) => ({
        mode,
        before: modesBefore.get(mode) ?? null,
        after: modesAfter.get(mode) ?? null,
      })),
    }
  })
}

/** A year that one visit did not know may be the other's. */
const differ = (one: number | undefined, other: number | undefined) =>
  one !== undefined && other !== undefined && one !== other

function modesAt(resolved: ResolvedDevice | null, household: ResolvedHousehold): Map<Mode, ModeAtVisit> {
  if (!resolved) return new Map()
  return new Map(
    modesOf(resolved).map((given) => [
      given.mode,
      { given, terms: modeTerms(given, resolved, household), resolved },
    ]),
  )
}

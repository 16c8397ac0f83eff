import type { Catalogue } from '../catalogue/catalogue.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import type { Fault } from '../fault.ts'
import { checkHousehold } from '../inventory/checkHousehold.ts'
import { isObject, list, text } from '../inventory/lenient.ts'

type Raw = Record<string, unknown>
const VISITS = ['before', 'after'] as const

/** Longer lists are refused by their shape. */
const MOST_CHECKED = 500

/**
 * The rules on two visits and a plan, on whatever of the raw input can be read: what a household must be, for each visit;
 * a meter is the same at both; a plan names devices that are there, each in one measure.
 */
export function checkVerification(raw: unknown, catalogue: Catalogue, settings: EstimateSettings): Fault[] {
  if (!isObject(raw)) return []
  return [
    ...checkHousehold({ ...raw, devices: [], meters: [] }, catalogue, settings),
    ...VISITS.flatMap((visit) => checkVisit(raw, visit, catalogue, settings)),
    ...checkMeters(raw),
    ...checkPlan(raw),
  ]
}

function checkVisit(raw: Raw, visit: string, catalogue: Catalogue, settings: EstimateSettings): Fault[] {
  const given = raw[visit]
  if (!isObject(given)) return []
  const { devices, meters } = given
  return checkHousehold({ devices, meters }, catalogue, settings).map((fault) => ({
    ...fault,
    pointer: `/${visit}${fault.pointer}`,
  }))
}

const listAt = (raw: Raw, visit: string, field: string): Raw[] => {
  const given = raw[visit]
  return isObject(given) ? list(given[field]).slice(0, MOST_CHECKED) : []
}

/** Readings of one meter share its gain at both visits, so that its limits of error cannot be two. */
function checkMeters(raw: Raw): Fault[] {
  const before = new Map(listAt(raw, 'before', 'meters').map((meter) => [text(meter['id']), meter]))
  return listAt(raw, 'after', 'meters').flatMap((meter, i) => {
    const id = text(meter['id'])
    const same = id === undefined ? undefined : before.get(id)
    if (!same || ACCURACY.every((field) => same[field] === meter[field])) return []
    const message = `The meter "${id}" has other limits of error than in before; give another meter an id of its own.`
    return [{ pointer: `/after/meters/${i}`, code: 'meter-differs', message }]
  })
}

const ACCURACY = ['percentOfReading', 'counts', 'resolution', 'preset'] as const

function checkPlan(raw: Raw): Fault[] {
  const known = new Set(VISITS.flatMap((visit) => listAt(raw, visit, 'devices').map(({ id }) => text(id))))
  const seen = new Map<string, string>()
  return list(raw['plan'])
    .slice(0, MOST_CHECKED)
    .flatMap((measure, i) =>
      namesIn(measure).flatMap((id, j): Fault[] => {
        const pointer = `/plan/${i}/deviceIds/${j}`
        if (id === undefined) return []
        if (!known.has(id)) {
          const message = `There is no device "${id}" at either visit.`
          return [{ pointer, code: 'unknown-device', message }]
        }
        const earlier = seen.get(id)
        seen.set(id, earlier ?? pointer)
        if (earlier === undefined) return []
        const message = `The device "${id}" is already named at ${earlier}. What one device saved cannot be told apart by measures: make them one measure.`
        return [{ pointer, code: 'device-in-two-measures', message }]
      }),
    )
}

const namesIn = ({ deviceIds }: Raw): (string | undefined)[] =>
  Array.isArray(deviceIds) ? deviceIds.slice(0, MOST_CHECKED).map(text) : []

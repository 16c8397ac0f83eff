import type { Catalogue } from '../catalogue/catalogue.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import type { Fault } from '../fault.ts'
import { checkHousehold } from './checkHousehold.ts'
import { isObject, list, text } from './lenient.ts'
import { personalDataFaults } from './personalData.ts'

/** More visits are refused by their shape; what lies beyond is not looked at. */
export const MOST_VISITS = 50

/**
 * The rules on an inventory besides those of its shape: nothing that tells who lives there, one visit a day, and on every
 * visit all that checkHousehold asks of a household. Checked on whatever of the raw input can be read.
 */
export function checkInventory(raw: unknown, catalogue: Catalogue, settings: EstimateSettings): Fault[] {
  if (!isObject(raw)) return []
  const visits = list(raw['visits']).slice(0, MOST_VISITS)
  return [
    ...personalDataFaults(raw),
    ...checkHousehold({ ...raw, devices: [], meters: [] }, catalogue, settings),
    ...sameDay(visits),
    ...visits.flatMap((visit, i) => checkVisit(visit, `/visits/${i}`, catalogue, settings)),
  ]
}

function checkVisit(
  visit: Record<string, unknown>,
  pointer: string,
  catalogue: Catalogue,
  settings: EstimateSettings,
): Fault[] {
  const { devices, meters } = visit
  return checkHousehold({ devices, meters }, catalogue, settings).map((fault) => ({
    ...fault,
    pointer: `${pointer}${fault.pointer}`,
  }))
}

function sameDay(visits: readonly Record<string, unknown>[]): Fault[] {
  const dates = visits.map((visit) => text(visit['date']))
  return dates.flatMap((date, i) => {
    const first = dates.indexOf(date)
    if (date === undefined || first === i) return []
    const message = `There is a visit on ${date} already, /visits/${first}; a visit is named by its date.`
    return [{ pointer: `/visits/${i}/date`, code: 'duplicate-visit', message }]
  })
}

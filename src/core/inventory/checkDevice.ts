import type { Catalogue } from '../catalogue/catalogue.ts'
import { type Category, type Mode, MODES } from '../catalogue/category.ts'
import { findCategory, nearestCategories } from '../catalogue/findCategory.ts'
import type { Fault } from '../fault.ts'
import { isObject, list, text } from './lenient.ts'

/** The trade's rules on one device; see checkHousehold. */
export function checkDevice(
  device: Record<string, unknown>,
  base: string,
  catalogue: Catalogue,
  meterIds: ReadonlySet<string | undefined>,
): Fault[] {
  const name = text(device['category'])
  const category = name ? findCategory(catalogue, name) : null
  const modes = list(device['modes'])
  return [
    ...(name && !category ? [unknownCategory(catalogue, name, base)] : []),
    ...modes.flatMap((mode, i) => checkMode(mode, modes, i, category, `${base}/modes/${i}`)),
    ...modes.flatMap((mode, i) => checkReading(mode['reading'], `${base}/modes/${i}/reading`, meterIds)),
    ...checkHours(modes, category, base),
  ]
}

/** An unknown name is answered with the nearest three. */
export function unknownCategory(catalogue: Catalogue, name: string, base: string): Fault {
  const nearest = nearestCategories(catalogue, name).map(({ code, name: full }) => `${code} (${full})`)
  const message = `There is no category "${name}". The nearest are: ${nearest.join(', ')}.`
  return { pointer: `${base}/category`, code: 'unknown-category', message }
}

function checkMode(
  given: Record<string, unknown>,
  modes: readonly Record<string, unknown>[],
  index: number,
  category: Category | null,
  base: string,
): Fault[] {
  const mode = given['mode'] as Mode
  if (!MODES.includes(mode)) return []
  const pointer = `${base}/mode`
  if (modes.findIndex((other) => other['mode'] === mode) < index)
    return [{ pointer, code: 'mode-twice', message: `The mode ${mode} is already given for this device.` }]
  if (!category || category.modes.some((known) => known.mode === mode)) return []
  const known = category.modes.map((one) => one.mode).join(', ')
  if (given['reading'] === undefined) {
    const message = `The catalogue has no typical draw of ${category.code} in ${mode}, only in: ${known}. Give a reading, or choose one of these.`
    return [{ pointer, code: 'mode-without-figure', message }]
  }
  if (given['hoursPerWeek'] !== undefined) return []
  const message = `The catalogue has no default hours of ${category.code} in ${mode}; give hoursPerWeek.`
  return [{ pointer: `${base}/hoursPerWeek`, code: 'required', message }]
}

/** That the meter a reading names is there, and that its accuracy is not given twice. */
export function checkReading(
  reading: unknown,
  base: string,
  meterIds: ReadonlySet<string | undefined>,
): Fault[] {
  const meterId = isObject(reading) ? text(reading['meterId']) : undefined
  if (!isObject(reading) || meterId === undefined) return []
  const faults: Fault[] = []
  const pointer = `${base}/meterId`
  if (!meterIds.has(meterId))
    faults.push({
      pointer,
      code: 'unknown-meter',
      message: `There is no meter "${meterId}" in meters; add it there.`,
    })
  if (reading['accuracy'] !== undefined)
    faults.push({ pointer, code: 'given-twice', message: 'Give meterId or accuracy, not both.' })
  return faults
}

const HOURS_IN_A_WEEK = 168

function checkHours(
  modes: readonly Record<string, unknown>[],
  category: Category | null,
  base: string,
): Fault[] {
  const hours = modes.reduce((sum, mode) => sum + hoursOf(mode, category), 0)
  if (hours <= HOURS_IN_A_WEEK + 1e-9) return []
  const message = `The modes of this device add up to ${Number(hours.toPrecision(6))} hours a week, but a week has 168. Give hoursPerWeek for every mode; what is left out is filled in from the catalogue.`
  return [{ pointer: `${base}/modes`, code: 'hours-exceed-week', message }]
}

/** The hours given, the typical ones of a range, or those that the catalogue will fill in. */
function hoursOf(mode: Record<string, unknown>, category: Category | null): number {
  const given = mode['hoursPerWeek']
  const hours = isObject(given) ? given['typical'] : given
  if (typeof hours === 'number' && Number.isFinite(hours)) return Math.max(0, hours)
  if (given !== undefined) return 0
  return category?.modes.find((known) => known.mode === mode['mode'])?.defaultHoursPerWeek ?? 0
}

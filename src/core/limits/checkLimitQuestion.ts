import type { Catalogue } from '../catalogue/catalogue.ts'
import type { Fault } from '../fault.ts'
import { isObject, text } from '../inventory/lenient.ts'
import { checkReadingToEvaluate } from '../readings/checkReadingToEvaluate.ts'
import type { Limit } from './limit.ts'

type Raw = Record<string, unknown>

/** What finds the limits that may apply, where none is named. */
const FINDS = ['jurisdiction', 'mode', 'placedOnMarket'] as const
const REFINES = ['showsStatus', 'highNetworkAvailability', 'supplyType', 'ratedOutputW'] as const
/** What a refinement is about. */
const MODE_OF: Readonly<Record<(typeof REFINES)[number], string>> = {
  showsStatus: 'standby',
  highNetworkAvailability: 'networked-standby',
  supplyType: 'no-load',
  ratedOutputW: 'no-load',
}

/**
 * The rules on a question about limits, checked on whatever of the raw input can be read: a reading or a power, one of the
 * two; a limit by its code, or what finds it; nothing that has no meaning in the mode.
 */
export function checkLimitQuestion(
  raw: unknown,
  catalogue: Catalogue,
  limits: ReadonlyMap<string, Limit>,
): Fault[] {
  if (!isObject(raw)) return []
  return [...checkPower(raw), ...checkSearch(raw, limits), ...checkReadingToEvaluate(raw, catalogue)]
}

function checkPower(raw: Raw): Fault[] {
  const faults: Fault[] = []
  if (raw['reading'] !== undefined && raw['powerW'] !== undefined)
    faults.push({ pointer: '/powerW', code: 'given-twice', message: 'Give reading or powerW, not both.' })
  if (raw['reading'] === undefined && raw['powerW'] === undefined)
    faults.push({
      pointer: '/reading',
      code: 'required',
      message: 'Give a reading, or powerW with its interval.',
    })
  return [...faults, ...checkOrder(raw['powerW'])]
}

function checkOrder(power: unknown): Fault[] {
  if (!isObject(power)) return []
  const [low, expected, high] = [power['low'], power['expected'], power['high']]
  if (typeof low !== 'number' || typeof expected !== 'number' || typeof high !== 'number') return []
  if (low <= expected && expected <= high) return []
  const message = `low (${low} W), expected (${expected} W) and high (${high} W) must not fall.`
  return [{ pointer: '/powerW', code: 'range-out-of-order', message }]
}

function checkSearch(raw: Raw, limits: ReadonlyMap<string, Limit>): Fault[] {
  const code = text(raw['limitCode'])
  if (code === undefined) return [...missing(raw), ...misplaced(raw)]
  const twice = [...FINDS, ...REFINES]
    .filter((field) => field !== 'mode' && raw[field] !== undefined)
    .map((field) => ({
      pointer: `/${field}`,
      code: 'given-twice',
      message: `limitCode names the limit, so ${field} is not looked at; leave one of them out.`,
    }))
  if (limits.has(code)) return twice
  const message = `There is no limit "${code}". GET /v1/limits lists those that are known.`
  return [...twice, { pointer: '/limitCode', code: 'unknown-code', message }]
}

const missing = (raw: Raw): Fault[] =>
  FINDS.filter((field) => raw[field] === undefined).map((field) => ({
    pointer: `/${field}`,
    code: 'required',
    message: `Give ${field}, or the limit by its limitCode.`,
  }))

function misplaced(raw: Raw): Fault[] {
  const mode = text(raw['mode'])
  if (mode === undefined) return []
  return REFINES.filter((field) => raw[field] !== undefined && MODE_OF[field] !== mode).map((field) => ({
    pointer: `/${field}`,
    code: 'not-of-this-mode',
    message: `${field} is of ${MODE_OF[field]} only, but the mode is ${mode}.`,
  }))
}

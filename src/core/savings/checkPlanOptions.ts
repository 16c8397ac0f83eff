import type { EstimateSettings } from '../estimate/settings.ts'
import type { Fault } from '../fault.ts'
import { deviceId } from '../inventory/deviceId.ts'
import { isObject, list, text } from '../inventory/lenient.ts'
import { type Measure, MEASURE_KINDS, OWN_FIELDS } from './measure.ts'

/** A plan looks at many sums for each device; an inventory of more devices is no household's. */
const MOST_PLANNED = 100
/** Longer lists are refused by their shape. */
const MOST_CHECKED = 500

type Raw = Record<string, unknown>

/** The rules on what a plan is asked for, checked on whatever of the raw input can be read; beside checkHousehold. */
export function checkPlanOptions(raw: unknown, settings: EstimateSettings): Fault[] {
  if (!isObject(raw)) return []
  const devices = list(raw['devices'])
  const plan = isObject(raw['plan']) ? raw['plan'] : {}
  const ids = devices.slice(0, MOST_CHECKED).map((device, i) => deviceId({ id: text(device['id']) }, i))
  return [
    ...(devices.length > MOST_PLANNED && devices.length <= MOST_CHECKED ? [tooMany(devices.length)] : []),
    ...checkMeasures(list(plan['measures']).slice(0, MOST_CHECKED), ids, settings.measures),
    ...checkRated(list(plan['devices']).slice(0, MOST_CHECKED), ids),
    ...checkOutlets(plan['outletsWithStrip'], devices),
    ...checkFactor(plan, settings),
  ]
}

const tooMany = (count: number): Fault => ({
  pointer: '/devices',
  code: 'too-many-devices',
  message: `A plan is made for at most ${MOST_PLANNED} entries, not ${count}; leave out those that nobody would change.`,
})

const unknownDevice = (pointer: string, id: string): Fault => ({
  pointer,
  code: 'unknown-device',
  message: `There is no device with the id "${id}" in devices; name one by its id, or device-1 for the first without one.`,
})

function checkMeasures(
  choices: readonly Raw[],
  ids: readonly string[],
  known: ReadonlyMap<string, Measure>,
): Fault[] {
  return choices.flatMap((choice, i) => {
    const base = `/plan/measures/${i}`
    const code = text(choice['code'])
    const measure = code === undefined ? undefined : known.get(code)
    const devices = namesIn(choice['devices'])
    return [
      ...(code !== undefined && !measure ? [unknownMeasure(base, code, known)] : []),
      ...(measure ? notOfKind(choice, measure, base) : []),
      ...devices.flatMap((id, j) => (ids.includes(id) ? [] : [unknownDevice(`${base}/devices/${j}`, id)])),
      ...(measure && isTwice(choice, choices.slice(0, i)) ? [twice(base, measure.code)] : []),
      ...(measure?.kind === 'setting' ? sameMode(choice, measure, base) : []),
    ]
  })
}

const namesIn = (value: unknown): string[] =>
  Array.isArray(value) ? value.filter((one): one is string => typeof one === 'string') : []

const unknownMeasure = (base: string, code: string, known: ReadonlyMap<string, Measure>): Fault => ({
  pointer: `${base}/code`,
  code: 'unknown-code',
  message: `There is no measure "${code}". Known are: ${[...known.keys()].join(', ')}.`,
})

const STRIP_FIELDS: readonly string[] = ['ratedLoadW', 'ratedLoadA']
const OWNED: ReadonlySet<string> = new Set([...Object.values(OWN_FIELDS).flat(), ...STRIP_FIELDS])

/** Figures that the kind of measure does not have. */
function notOfKind(choice: Raw, { code, kind }: Measure, base: string): Fault[] {
  const own: readonly string[] = [...OWN_FIELDS[kind], ...(kind === 'switchable-strip' ? STRIP_FIELDS : [])]
  return Object.keys(choice)
    .filter((field) => OWNED.has(field) && !own.includes(field))
    .map((field) => ({
      pointer: `${base}/${field}`,
      code: 'not-of-this-kind',
      message: `${code} is a measure of the kind ${kind} (of ${MEASURE_KINDS.join(', ')}), which has no ${field}; leave it out.`,
    }))
}

/** Whether an earlier entry of the same measure is for one of the same devices. */
function isTwice(choice: Raw, earlier: readonly Raw[]): boolean {
  const devices = choice['devices'] === undefined ? null : namesIn(choice['devices'])
  return earlier.some((other) => {
    if (text(other['code']) !== text(choice['code'])) return false
    const others = other['devices'] === undefined ? null : namesIn(other['devices'])
    return devices === null || others === null || devices.some((id) => others.includes(id))
  })
}

const twice = (base: string, code: string): Fault => ({
  pointer: base,
  code: 'measure-twice',
  message: `${code} is already given for one of these devices; give it once, or name other devices.`,
})

function sameMode(choice: Raw, { code, fromMode, toMode }: Measure, base: string): Fault[] {
  const [from, to] = [choice['fromMode'] ?? fromMode, choice['toMode'] ?? toMode]
  if (from !== to) return []
  const pointer = `${base}/${choice['toMode'] === undefined ? 'fromMode' : 'toMode'}`
  return [{ pointer, code: 'same-mode', message: `${code} would move hours from ${text(from)} to itself.` }]
}

function checkRated(rated: readonly Raw[], ids: readonly string[]): Fault[] {
  const named = rated.map((one) => text(one['deviceId']))
  return named.flatMap((id, i) => {
    if (id === undefined) return []
    const pointer = `/plan/devices/${i}/deviceId`
    if (!ids.includes(id)) return [unknownDevice(pointer, id)]
    if (named.indexOf(id) === i) return []
    return [{ pointer, code: 'duplicate-id', message: `The device "${id}" is already given; give it once.` }]
  })
}

function checkOutlets(outlets: unknown, devices: readonly Raw[]): Fault[] {
  const known = [...new Set(devices.flatMap((device) => text(device['outlet']) ?? []))]
  return namesIn(outlets).flatMap((outlet, i) =>
    known.includes(outlet.trim())
      ? []
      : [
          {
            pointer: `/plan/outletsWithStrip/${i}`,
            code: 'unknown-outlet',
            message: `No device is plugged in at "${outlet}". Outlets that devices name: ${known.join(', ') || 'none'}.`,
          },
        ],
  )
}

function checkFactor(plan: Raw, { emissionFactors }: EstimateSettings): Fault[] {
  const code = text(plan['marginalFactorCode'])
  if (code === undefined) return []
  const pointer = '/plan/marginalFactorCode'
  if (plan['marginalFactor'] !== undefined)
    return [{ pointer, code: 'given-twice', message: 'Give marginalFactor or marginalFactorCode, not both.' }]
  if (emissionFactors.get(code)?.kind === 'marginal') return []
  const known = [...emissionFactors.values()].filter(({ kind }) => kind === 'marginal')
  const message = `There is no marginal emission factor "${code}". Known are: ${known.map((one) => one.code).join(', ') || 'none'}.`
  return [{ pointer, code: 'unknown-code', message }]
}

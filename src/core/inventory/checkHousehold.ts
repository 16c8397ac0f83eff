import type { Catalogue } from '../catalogue/catalogue.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import type { Fault } from '../fault.ts'
import { notPriced } from '../money/notPriced.ts'
import { codesInUse } from '../reference/codesInUse.ts'
import { checkDevice } from './checkDevice.ts'
import { deviceId } from './deviceId.ts'
import { isObject, list, text } from './lenient.ts'

/** Longer lists are refused by their shape; what lies beyond is not looked at, so that it costs nothing. */
const MOST_CHECKED = 500

/**
 * The trade's rules on a household, checked on whatever of the raw input can be read, so that they are named together
 * with the faults of its shape: categories and their modes exist, hours fit into a week, ids are unique, meters,
 * tariffs and factors are known, nothing is said twice.
 */
export function checkHousehold(raw: unknown, catalogue: Catalogue, settings: EstimateSettings): Fault[] {
  if (!isObject(raw)) return []
  const devices = list(raw['devices']).slice(0, MOST_CHECKED)
  const meters = list(raw['meters']).slice(0, MOST_CHECKED)
  const meterIds = new Set(meters.map((meter) => text(meter['id'])))
  return [
    ...eitherOr(raw, 'tariff', 'tariffCode', settings.tariffs),
    ...eitherOr(raw, 'emissionFactor', 'emissionFactorCode', settings.emissionFactors),
    ...missingDefaults(raw, settings),
    ...notPriced(raw['tariff'], '/tariff'),
    ...givenTwice(raw),
    ...checkFactorChoice(raw, settings),
    ...duplicateIds(
      '/meters',
      meters.map((meter) => text(meter['id'])),
    ),
    ...duplicateIds(
      '/devices',
      devices.map((device, i) => deviceId({ id: text(device['id']) }, i)),
    ),
    ...devices.flatMap((device, i) => checkDevice(device, `/devices/${i}`, catalogue, meterIds)),
  ]
}

function eitherOr(
  raw: Record<string, unknown>,
  inline: string,
  byCode: string,
  entries: EstimateSettings['tariffs'] | EstimateSettings['emissionFactors'],
): Fault[] {
  const code = text(raw[byCode])
  if (code === undefined) return []
  const pointer = `/${byCode}`
  if (raw[inline] !== undefined)
    return [{ pointer, code: 'given-twice', message: `Give ${inline} or ${byCode}, not both.` }]
  if (entries.has(code)) return []
  const message = `There is no ${inline} "${code}". Known are: ${codesInUse(entries).join(', ')}.`
  return [{ pointer, code: 'unknown-code', message }]
}

const TARIFF_FIELDS = ['tariff', 'tariffCode', 'tariffs'] as const
const FACTOR_FIELDS = ['emissionFactor', 'emissionFactorCode', 'emissionFactorFor'] as const

/** What the operator falls back on today need not have been there at a past revision. */
function missingDefaults(raw: Record<string, unknown>, settings: EstimateSettings): Fault[] {
  const { defaultTariffCode, defaultEmissionFactorCode, referenceRevision } = settings
  const missing = (pointer: string, words: string, code: string): Fault => ({
    pointer,
    code: 'required',
    message: `The operator's ${words} ${code} was not there at revision ${referenceRevision}; give one.`,
  })
  const isGiven = (field: string) => raw[field] !== undefined
  return [
    ...(TARIFF_FIELDS.some(isGiven) || settings.tariffs.has(defaultTariffCode)
      ? []
      : [missing('/tariffCode', 'tariff', defaultTariffCode)]),
    ...(FACTOR_FIELDS.some(isGiven) || settings.emissionFactors.has(defaultEmissionFactorCode)
      ? []
      : [missing('/emissionFactorCode', 'emission factor', defaultEmissionFactorCode)]),
  ]
}

function checkFactorChoice(raw: Record<string, unknown>, { emissionFactors }: EstimateSettings): Fault[] {
  const choice = raw['emissionFactorFor']
  const region = isObject(choice) ? text(choice['region']) : undefined
  if (!isObject(choice) || region === undefined) return []
  const kind = choice['kind'] === 'marginal' ? 'marginal' : 'average'
  const known = [...emissionFactors.values()].filter((factor) => factor.kind === kind && !factor.retired)
  if (known.some(({ regionCode }) => regionCode === region)) return []
  const regions = [...new Set(known.map(({ regionCode }) => regionCode))].sort()
  const message = `There is no ${kind} emission factor of a region "${region}". Known are: ${regions.join(', ')}.`
  return [{ pointer: '/emissionFactorFor/region', code: 'unknown-region', message }]
}

/** Fields of which a household gives one at most. */
const ALTERNATIVES = [
  ['emissionFactor', 'emissionFactorFor'],
  ['emissionFactorCode', 'emissionFactorFor'],
  ['annualUseKwh', 'monthlyUseKwh'],
] as const

const givenTwice = (raw: Record<string, unknown>): Fault[] =>
  ALTERNATIVES.filter((pair) => pair.every((field) => raw[field] !== undefined)).map(([one, other]) => ({
    pointer: `/${other}`,
    code: 'given-twice',
    message: `Give ${one} or ${other}, not both.`,
  }))

export function duplicateIds(base: string, ids: readonly (string | undefined)[]): Fault[] {
  return ids.flatMap((id, index) => {
    const first = ids.indexOf(id)
    if (id === undefined || first === index) return []
    const message = `The id "${id}" is already that of ${base}/${first}; ids must be unique.`
    return [{ pointer: `${base}/${index}/id`, code: 'duplicate-id', message }]
  })
}

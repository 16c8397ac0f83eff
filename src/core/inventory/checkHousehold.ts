import type { Catalogue } from '../catalogue/catalogue.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import type { Fault } from '../fault.ts'
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
    ...eitherOr(raw, 'tariff', 'tariffCode', [...settings.tariffs.keys()]),
    ...eitherOr(raw, 'emissionFactor', 'emissionFactorCode', [...settings.emissionFactors.keys()]),
    ...checkCurrency(raw),
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
  codes: readonly string[],
): Fault[] {
  const code = text(raw[byCode])
  if (code === undefined) return []
  const pointer = `/${byCode}`
  if (raw[inline] !== undefined)
    return [{ pointer, code: 'given-twice', message: `Give ${inline} or ${byCode}, not both.` }]
  if (codes.includes(code)) return []
  const message = `There is no ${inline} "${code}". Known are: ${codes.join(', ')}.`
  return [{ pointer, code: 'unknown-code', message }]
}

const CURRENCIES = new Set(Intl.supportedValuesOf('currency'))

function checkCurrency(raw: Record<string, unknown>): Fault[] {
  const currency = isObject(raw['tariff']) ? text(raw['tariff']['currency']) : undefined
  if (currency === undefined || !/^[A-Z]{3}$/.test(currency) || CURRENCIES.has(currency)) return []
  const message = `"${currency}" is not a currency of ISO 4217; give its three-letter code, such as EUR.`
  return [{ pointer: '/tariff/currency', code: 'unknown-currency', message }]
}

function duplicateIds(base: string, ids: readonly (string | undefined)[]): Fault[] {
  return ids.flatMap((id, index) => {
    const first = ids.indexOf(id)
    if (id === undefined || first === index) return []
    const message = `The id "${id}" is already that of ${base}/${first}; ids must be unique.`
    return [{ pointer: `${base}/${index}/id`, code: 'duplicate-id', message }]
  })
}

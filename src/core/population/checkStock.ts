import type { Catalogue } from '../catalogue/catalogue.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import type { Fault } from '../fault.ts'
import { checkDevice } from '../inventory/checkDevice.ts'
import { isObject, list, text } from '../inventory/lenient.ts'
import { codesInUse } from '../reference/codesInUse.ts'
import { defaultPrice } from './usedFor.ts'

type Raw = Record<string, unknown>

/** Longer lists are refused by their shape; what lies beyond is not looked at, so that it costs nothing. */
const MOST_CHECKED = 100

/**
 * The trade's rules on a stock of devices, checked on whatever of the raw input can be read: categories and their modes
 * exist, hours fit into a week, an item is of the catalogue or has a draw of its own, names of the ladder are told apart.
 */
export function checkStock(raw: unknown, catalogue: Catalogue, settings: EstimateSettings): Fault[] {
  if (!isObject(raw)) return []
  const items = list(raw['items']).slice(0, MOST_CHECKED)
  const ladder = list(raw['ladder']).slice(0, MOST_CHECKED)
  return [
    ...items.flatMap((item, i) => checkItem(item, `/items/${i}`, catalogue)),
    ...namesTwice(ladder),
    ...checkPrice(raw, settings),
    ...checkFactor(raw, settings),
  ]
}

const OWN_DRAW = ['name', 'drawW', 'hoursPerWeek'] as const
const OF_CATEGORY = ['year', 'modes'] as const

function checkItem(item: Raw, base: string, catalogue: Catalogue): Fault[] {
  if (item['category'] !== undefined)
    return [
      ...OWN_DRAW.filter((field) => item[field] !== undefined).map((field) => ({
        pointer: `${base}/${field}`,
        code: 'given-twice',
        message:
          'An item is of the catalogue, by category, or has a name, drawW and hoursPerWeek of its own; not both.',
      })),
      ...checkDevice(item, base, catalogue, new Set()),
    ]
  return [
    ...OWN_DRAW.filter((field) => item[field] === undefined).map((field) => ({
      pointer: `${base}/${field}`,
      code: 'required',
      message: 'An item without a category needs its name, drawW and hoursPerWeek.',
    })),
    ...OF_CATEGORY.filter((field) => item[field] !== undefined).map((field) => ({
      pointer: `${base}/${field}`,
      code: 'needs-category',
      message: `${field} goes with a category of the catalogue.`,
    })),
  ]
}

function namesTwice(ladder: readonly Raw[]): Fault[] {
  const names = ladder.map((rung) => text(rung['name']))
  return names.flatMap((name, i) => {
    const first = names.indexOf(name)
    if (name === undefined || first === i) return []
    const message = `The name "${name}" is already that of /ladder/${first}.`
    return [{ pointer: `/ladder/${i}/name`, code: 'name-twice', message }]
  })
}

const CURRENCIES = new Set(Intl.supportedValuesOf('currency'))

function checkPrice(raw: Raw, settings: EstimateSettings): Fault[] {
  const price = raw['price']
  if (price === undefined && !defaultPrice(settings)) {
    const message =
      'The operator’s tariff has no single price of a kWh; give the mean price that these homes pay.'
    return [{ pointer: '/price', code: 'required', message }]
  }
  const currency = isObject(price) ? text(price['currency']) : undefined
  if (currency === undefined || !/^[A-Z]{3}$/.test(currency) || CURRENCIES.has(currency)) return []
  const message = `"${currency}" is not a currency of ISO 4217; give its three-letter code, such as EUR.`
  return [{ pointer: '/price/currency', code: 'unknown-currency', message }]
}

function checkFactor(
  raw: Raw,
  { emissionFactors, defaultEmissionFactorCode, referenceRevision }: EstimateSettings,
): Fault[] {
  const code = text(raw['emissionFactorCode'])
  const pointer = '/emissionFactorCode'
  if (code === undefined) {
    if (raw['emissionFactor'] !== undefined || emissionFactors.has(defaultEmissionFactorCode)) return []
    const message = `The operator’s emission factor ${defaultEmissionFactorCode} was not there at revision ${referenceRevision}; give one.`
    return [{ pointer, code: 'required', message }]
  }
  if (raw['emissionFactor'] !== undefined)
    return [{ pointer, code: 'given-twice', message: 'Give emissionFactor or emissionFactorCode, not both.' }]
  if (emissionFactors.has(code)) return []
  const known = codesInUse(emissionFactors).join(', ')
  return [
    { pointer, code: 'unknown-code', message: `There is no emission factor "${code}". Known are: ${known}.` },
  ]
}

import { wattsOfEnergy } from '../core/baseLoad/readingColumns.ts'

/** What a ReadingType's values are: mean power in, power fed in, or nothing that tells a base load. */
export type Meaning =
  | {
      readonly kind: 'use' | 'net'
      readonly unit: 'Wh' | 'W'
      readonly instantaneous: boolean
      toWatts: ToWatts
    }
  | { readonly kind: 'fed-in' }
  | { readonly kind: 'unusable'; readonly reason: string }
type ToWatts = (value: number, durationSeconds: number) => number

/**
 * Codes of IEC 61968-9 as ESPI has them.
 * uom 38 W, 72 Wh, 61 VA, 63 var, 71 VAh, 73 varh; flowDirection 1 forward, 4 net (forward less reverse), 19 reverse,
 * 20 total: V2 (schema text of IEEE 2030.5, which takes them from the same table). accumulationBehaviour 4 delta, 1 bulk,
 * 3 cumulative, 9 summation, 12 instantaneous, 6 indicating; dataQualifier 2 average, 8 maximum, 9 minimum, 12 normal: M.
 */
const OTHER_UNITS: Readonly<Record<string, string>> = {
  '61': 'VA, apparent power',
  '63': 'var, non-active power',
  '71': 'VAh, apparent energy',
  '73': 'varh, non-active energy',
  '169': 'therms of gas',
  '119': 'cubic feet of gas or water',
  '42': 'cubic metres of gas or water',
}

/** What the values of a ReadingType mean, with the power of ten of its multiplier. */
export function meaningOf(fields: Readonly<Record<string, string>>): Meaning {
  const { uom = '', flowDirection = '0', accumulationBehaviour = '0', dataQualifier = '0' } = fields
  const { powerOfTenMultiplier = '0' } = fields
  const power = Number(powerOfTenMultiplier)
  if (!Number.isInteger(power) || Math.abs(power) > 12)
    return unusable(`its powerOfTenMultiplier is ${JSON.stringify(powerOfTenMultiplier)}`)
  if (uom !== '72' && uom !== '38')
    return unusable(
      uom === ''
        ? 'it names no unit (uom)'
        : `its unit is uom ${uom}${name(OTHER_UNITS[uom])}; only 72 (Wh) and 38 (W) tell real power`,
    )
  if (flowDirection === '19') return { kind: 'fed-in' }
  if (!['0', '1', '4'].includes(flowDirection))
    return unusable(
      `its flowDirection is ${flowDirection}; only 1 (forward) and 4 (net) tell what the home draws`,
    )
  if (dataQualifier === '8' || dataQualifier === '9')
    return unusable('it holds the highest or lowest value within each interval, not the mean')
  const instantaneous = uom === '38' && ['6', '12'].includes(accumulationBehaviour)
  if (!['0', '4'].includes(accumulationBehaviour) && !instantaneous)
    return unusable(
      `its accumulationBehaviour is ${accumulationBehaviour}: the state of a counter, not the energy of each interval; export the intervals (4, delta)`,
    )
  return {
    kind: flowDirection === '4' ? 'net' : 'use',
    unit: uom === '72' ? 'Wh' : 'W',
    instantaneous,
    toWatts: converter(uom, power),
  }
}

const unusable = (reason: string): Meaning => ({ kind: 'unusable', reason })
const name = (unit: string | undefined) => (unit === undefined ? '' : ` (${unit})`)

/** A power of ten below one is divided by, so that 530 x 10^-1 is 53 and not 53.000000000000004. */
function converter(uom: string, power: number): ToWatts {
  const scale = 10 ** Math.abs(power)
  const scaled = power < 0 ? (value: number) => value / scale : (value: number) => value * scale
  return uom === '72' ? (value, seconds) => wattsOfEnergy(scaled(value), seconds) : scaled
}

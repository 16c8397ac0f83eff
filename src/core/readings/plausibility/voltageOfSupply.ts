import type { Warning } from '../../estimate/estimate.ts'
import type { Supply } from '../../inventory/household.ts'
import type { Reading } from '../reading.ts'

/** Supplies stay within +-10 % of their nominal voltage nearly all the time (EN 50160, from memory). */
const USUAL_TOLERANCE_PERCENT = 10

/** A voltage that was read beside a current, but is not that of the household's supply. */
export function voltageOfSupply(reading: Reading, supply: Supply): Warning[] {
  if (reading.kind !== 'current' || reading.volts === undefined) return []
  const tolerance = Math.max(USUAL_TOLERANCE_PERCENT, supply.tolerancePercent)
  const offPercent = Math.abs(reading.volts / supply.volts - 1) * 100
  if (offPercent <= tolerance) return []
  const message = `The voltage of ${reading.volts} V does not fit a supply of ${supply.volts} V +-${tolerance} %. Correct it, give the supply that the device is really on, or leave volts out.`
  return [{ code: 'voltage-does-not-fit-supply', message }]
}

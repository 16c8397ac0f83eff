import type { Warning } from '../../estimate/estimate.ts'
import type { Supply } from '../../inventory/household.ts'
import type { Reading } from '../reading.ts'
import { shown } from '../shown.ts'

/** What an outlet's circuit carries, A; common practice in Europe, less elsewhere, no source. */
const OUTLET_AMPERES = 16

/** A figure that no outlet delivers needs no catalogue to be doubted: most often mA were typed as A. */
export function againstOutlet(reading: Reading, watts: number, { volts }: Supply): Warning[] {
  const amperes = reading.kind === 'current' ? reading.amperes / (reading.loops ?? 1) : watts / volts
  if (amperes <= OUTLET_AMPERES) return []
  const advice =
    reading.kind === 'current'
      ? `If the meter showed mA and not A, give ${shown(reading.amperes / 1000)} in place of ${reading.amperes}.`
      : 'Check the unit: mW, W or kW.'
  const message = `The reading comes to ${shown(amperes)} A, more than the ${OUTLET_AMPERES} A that an outlet carries. ${advice}`
  return [{ code: 'more-than-an-outlet-carries', message }]
}

import type { Warning } from '../estimate/estimate.ts'
import { rectangularSum } from '../quantity/rectangularSum.ts'
import { type HeatLoss, heatLoss } from './heatLoss.ts'
import type { PowerOfReading } from './powerModel.ts'
import type { ThermalReading } from './reading.ts'
import { shown } from './shown.ts'

/** Half-width of the indication, as a share of it (DESIGN section 3; the service's own assumption). */
export const INDICATION_HALF_WIDTH = 0.3

/**
 * Power from the warmth of a surface: all that a device takes in and does not send out leaves it as heat (heatLoss.ts).
 * An indication, rectangular +-30 %: of the surface that is given, and of no other.
 */
export function powerOfThermal(reading: ThermalReading): PowerOfReading {
  const heat = heatLoss(reading)
  const watts = heat.convectionW + heat.radiationW
  return {
    power: { coefficient: 1, factors: [rectangularSum(watts, INDICATION_HALF_WIDTH * watts)] },
    heat,
    flag: 'partly-measured',
    explanation: `P = A (h dT + emissivity sigma (Ts^4 - Ta^4)) = ${shown(heat.convectionW)} W by convection + ${shown(heat.radiationW)} W by radiation of ${reading.areaM2} m² at ${reading.surfaceTemperatureC} °C in ${reading.ambientTemperatureC} °C, an indication to +-30 %.`,
    warnings: warningsOf(reading, heat),
  }
}

/** Below this difference, K, a camera that is right to +-2 K is wrong by more than 30 % of it. */
const SMALLEST_DIFFERENCE = 7
const SHINY = 0.5

function warningsOf(reading: ThermalReading, { withinRange, rayleigh, emissivity }: HeatLoss): Warning[] {
  const difference = reading.surfaceTemperatureC - reading.ambientTemperatureC
  const warnings: Warning[] = []
  if (!withinRange)
    warnings.push({
      code: 'thermal-outside-range',
      message: `The surface is too ${rayleigh < 1e6 ? 'small or too little warm' : 'large or too warm'} for the published correlation (Rayleigh number ${shown(rayleigh)}), so the heat may be further off than +-30 %. Read the device with a plug-in wattmeter.`,
    })
  if (difference < SMALLEST_DIFFERENCE)
    warnings.push({
      code: 'thermal-difference-small',
      message: `The surface is only ${shown(difference)} K warmer than the room. Thermal cameras are right to about +-2 K (common practice, no source), which alone is more than the +-30 % that the indication claims. Read the device with a plug-in wattmeter.`,
    })
  if (emissivity < SHINY)
    warnings.push({
      code: 'thermal-shiny-surface',
      message: `An emissivity of ${emissivity} is that of bare metal, which mirrors the room: the camera shows the room’s temperature in place of the surface’s. Put matt tape on it, read the tape, and give 0.95.`,
    })
  return warnings
}

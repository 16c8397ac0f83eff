import { INDICATION_HALF_WIDTH } from '../powerOfThermal.ts'
import type { ThermalReading } from '../reading.ts'
import { shown } from '../shown.ts'
import { type Evaluated, step, type Step } from './step.ts'

/** Where the heat of a warm surface goes. */
export function stepsOfThermal(reading: ThermalReading, { read }: Evaluated): Step[] {
  const { surfaceTemperatureC, ambientTemperatureC, areaM2, orientation } = reading
  const heat = read.heat!
  const watts = heat.convectionW + heat.radiationW
  return [
    step(
      'What a device takes in leaves it as heat. The film of air at the surface has about the mean of both temperatures; its properties are taken there.',
      `T_film = (${surfaceTemperatureC} °C + ${ambientTemperatureC} °C) / 2`,
      `${shown((surfaceTemperatureC + ambientTemperatureC) / 2)} °C: k = ${shown(heat.air.conductivity)} W/(m K), nu = ${shown(heat.air.kinematicViscosity)} m²/s, Pr = ${shown(heat.air.prandtl)}`,
    ),
    step(
      LENGTH[orientation],
      orientation === 'vertical' ? 'L = height' : 'L = area / perimeter',
      `L = ${shown(heat.lengthM)} m`,
    ),
    step(
      'Warm air rises along the surface. How strongly, the Rayleigh number says.',
      'Ra = g beta (Ts - Ta) L^3 / (nu alpha)',
      `Ra = ${shown(heat.rayleigh)}`,
    ),
    step(
      `From it a published correlation (${SOURCE[orientation]}) gives the Nusselt number, and from that follows the heat for each m² and K.`,
      'h = Nu k / L',
      `Nu = ${shown(heat.nusselt)}, h = ${shown(heat.filmCoefficient)} W/(m² K)`,
    ),
    step('By convection', 'A h (Ts - Ta)', `${shown(heat.convectionW)} W`),
    step(
      'By radiation, with temperatures from absolute zero',
      `A emissivity sigma (Ts^4 - Ta^4), emissivity = ${heat.emissivity}`,
      `${shown(heat.radiationW)} W`,
    ),
    step(
      'Together, to +-30 %: an indication. Heat that leaves by other surfaces, a wall or the plug’s pins is not in it.',
      `P = ${shown(heat.convectionW)} W + ${shown(heat.radiationW)} W, area ${areaM2} m²`,
      `${shown(watts)} W (${shown((1 - INDICATION_HALF_WIDTH) * watts)} to ${shown((1 + INDICATION_HALF_WIDTH) * watts)} at most)`,
    ),
  ]
}

const LENGTH = {
  vertical: 'On a vertical surface the height counts.',
  'facing-up': 'On a horizontal surface its area over its perimeter counts; here it faces up.',
  'facing-down':
    'On a horizontal surface its area over its perimeter counts; here it faces down, so the warm air is held back.',
} as const

const SOURCE = {
  vertical: 'Churchill and Chu',
  'facing-up': 'McAdams; Raithby and Hollands for small surfaces',
  'facing-down': 'McAdams; Raithby and Hollands for small surfaces',
} as const

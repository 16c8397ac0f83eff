import { airProperties, type AirProperties } from './convection/airProperties.ts'
import { FACING_DOWN_RANGE, nusseltFacingDown } from './convection/nusseltFacingDown.ts'
import { FACING_UP_RANGE, nusseltFacingUp } from './convection/nusseltFacingUp.ts'
import { nusseltVertical, VERTICAL_RANGE } from './convection/nusseltVertical.ts'
import { radiation } from './convection/radiation.ts'
import { rayleigh } from './convection/rayleigh.ts'
import type { Orientation, ThermalReading } from './reading.ts'

/** Where the heat of a warm surface goes, with everything that it was worked out from. */
export interface HeatLoss {
  readonly filmK: number
  readonly air: AirProperties
  /** Height of a vertical surface; area over perimeter of a horizontal one. */
  readonly lengthM: number
  readonly rayleigh: number
  readonly nusselt: number
  /** False where the Rayleigh number is outside of what the correlation is published for. */
  readonly withinRange: boolean
  /** W/(m² K) */
  readonly filmCoefficient: number
  readonly emissivity: number
  readonly convectionW: number
  readonly radiationW: number
}

const CORRELATIONS = {
  vertical: { nusselt: nusseltVertical, range: VERTICAL_RANGE },
  'facing-up': { nusselt: nusseltFacingUp, range: FACING_UP_RANGE },
  'facing-down': { nusselt: nusseltFacingDown, range: FACING_DOWN_RANGE },
} as const

/** Of plastic housings and painted metal; common practice, no source. */
export const USUAL_EMISSIVITY = 0.9

const ZERO_CELSIUS_K = 273.15

/**
 * Heat that a warm surface gives off to still air and to the room around it.
 *
 *   P = A (h dT + emissivity sigma (Ts^4 - Ta^4)),   h = Nu k / L
 *
 * Nu from the correlation for the surface's orientation, air at the film temperature (Ts + Ta)/2, the room's walls at
 * the temperature of its air. Wrong where a fan blows, or something stands close by. Source: the correlations name theirs.
 */
export function heatLoss(reading: ThermalReading): HeatLoss {
  const { surfaceTemperatureC, ambientTemperatureC, areaM2, orientation, emissivity } = reading
  const difference = surfaceTemperatureC - ambientTemperatureC
  const surfaceK = surfaceTemperatureC + ZERO_CELSIUS_K
  const ambientK = ambientTemperatureC + ZERO_CELSIUS_K
  const filmK = (surfaceK + ambientK) / 2
  const air = airProperties(filmK)
  const lengthM = characteristicLength(orientation, areaM2, reading.heightM)
  const number = rayleigh(difference, lengthM, air)
  const { nusselt, range } = CORRELATIONS[orientation]
  const value = nusselt(number, air.prandtl)
  const filmCoefficient = (value * air.conductivity) / lengthM
  return {
    filmK,
    air,
    lengthM,
    rayleigh: number,
    nusselt: value,
    withinRange: number >= range.from && number <= range.to,
    filmCoefficient,
    emissivity: emissivity ?? USUAL_EMISSIVITY,
    convectionW: areaM2 * filmCoefficient * difference,
    radiationW: areaM2 * radiation(surfaceK, ambientK, emissivity ?? USUAL_EMISSIVITY),
  }
}

/**
 * The length that the correlation counts in, m. Vertical: the height. Horizontal: area over perimeter of a rectangle
 * whose one side is heightM. Where heightM is left out, the surface counts as a square.
 */
export function characteristicLength(orientation: Orientation, areaM2: number, heightM?: number): number {
  const side = heightM ?? Math.sqrt(areaM2)
  return orientation === 'vertical' ? side : areaM2 / (2 * (side + areaM2 / side))
}

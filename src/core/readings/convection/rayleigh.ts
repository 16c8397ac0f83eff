import type { AirProperties } from './airProperties.ts'

/** Standard acceleration of gravity, m/s², exact by convention (3rd CGPM, 1901). */
const STANDARD_GRAVITY = 9.80665

/**
 * Rayleigh number: how strongly buoyancy drives the air along a warm surface.
 *
 *   Ra = g beta dT L^3 / (nu alpha)
 *
 * @param differenceK surface less ambient temperature, K
 * @param lengthM height of a vertical surface; area over perimeter of a horizontal one, m
 * @param air at the film temperature
 */
export function rayleigh(
  differenceK: number,
  lengthM: number,
  { expansion, kinematicViscosity, thermalDiffusivity }: AirProperties,
): number {
  return (
    (STANDARD_GRAVITY * expansion * differenceK * lengthM ** 3) / (kinematicViscosity * thermalDiffusivity)
  )
}

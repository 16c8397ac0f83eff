/** Rayleigh numbers that the correlations are published for, both together. */
export const FACING_DOWN_RANGE = { from: 1e3, to: 1e11 } as const
/** Below this, McAdams' correlation is out of its range. */
export const FACING_DOWN_LAMINAR_FROM = 1e5

/**
 * Mean Nusselt number of a warm horizontal surface that faces down, by area over perimeter.
 *
 *   Nu = 0.27 Ra^(1/4)                                                   for 1e5 <= Ra <= 1e11
 *   Nu = 2.5 / ln(1 + 2.5 [1 + (1.9/Pr)^(9/10)]^(2/9) / (0.527 Ra^(1/5)))    for 1e3 <= Ra < 1e5
 *
 * The step at 1e5 is 7 %. Source: McAdams, Heat Transmission, 3rd ed., 1954, with Lc = A/P (V in git:CalebBell/ht,
 * ranges in reference texts); below 1e5 Raithby and Hollands as in Nellis and Klein, Introduction to Engineering Heat
 * Transfer, 1e3 < Ra < 1e10 (V2, read in git:TomLXXVI/python-hvac).
 */
export function nusseltFacingDown(rayleigh: number, prandtl: number): number {
  if (rayleigh >= FACING_DOWN_LAMINAR_FROM) return 0.27 * rayleigh ** (1 / 4)
  const thin = (0.527 * rayleigh ** (1 / 5)) / (1 + (1.9 / prandtl) ** (9 / 10)) ** (2 / 9)
  return 2.5 / Math.log(1 + 2.5 / thin)
}

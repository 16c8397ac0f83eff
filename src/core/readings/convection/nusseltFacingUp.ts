import { laminarConstant } from './laminarConstant.ts'

/** Rayleigh numbers that the correlations are published for, all three together. */
export const FACING_UP_RANGE = { from: 1, to: 1e11 } as const
/** Below this, McAdams' correlation is out of its range. */
export const FACING_UP_LAMINAR_FROM = 1e4
export const FACING_UP_TURBULENT_FROM = 1e7

/**
 * Mean Nusselt number of a warm horizontal surface that faces up, by area over perimeter.
 *
 *   Nu = 0.54 Ra^(1/4)      for 1e4 <= Ra <= 1e7
 *   Nu = 0.15 Ra^(1/3)      for 1e7 < Ra <= 1e11
 *   Nu = (l^10 + t^10)^(1/10),  l = 1.4 / ln(1 + 1.4/(0.835 C Ra^(1/4))),  t = 0.14 (1 + 0.0107 Pr)/(1 + 0.01 Pr) Ra^(1/3)
 *                           for 1 <= Ra < 1e4, with C = laminarConstant(Pr): small plug packs, where air conducts, too
 *
 * Just above 1e7 the rule of the ranges is kept, as printed: the step up is 6 %. A well-known textbook example (Cengel
 * 9-2, Ra = 1.2e7) goes on with 0.54 Ra^(1/4) there, 8 % lower. At 1e4 the step up is 9 %. Both are far below the
 * +-30 % of the indication.
 * Source: McAdams, Heat Transmission, 3rd ed., 1954, with Lc = A/P (V in git:CalebBell/ht, ranges in
 * reference texts); below 1e4 Raithby and Hollands as in Nellis and Klein, Introduction to Engineering Heat Transfer,
 * 1 < Ra < 1e10 (V2, read in git:TomLXXVI/python-hvac).
 */
export function nusseltFacingUp(rayleigh: number, prandtl: number): number {
  if (rayleigh > FACING_UP_TURBULENT_FROM) return 0.15 * rayleigh ** (1 / 3)
  if (rayleigh >= FACING_UP_LAMINAR_FROM) return 0.54 * rayleigh ** (1 / 4)
  const thin = 0.835 * laminarConstant(prandtl) * rayleigh ** (1 / 4)
  const laminar = 1.4 / Math.log(1 + 1.4 / thin)
  const turbulent = 0.14 * ((1 + 0.0107 * prandtl) / (1 + 0.01 * prandtl)) * rayleigh ** (1 / 3)
  return (laminar ** 10 + turbulent ** 10) ** (1 / 10)
}

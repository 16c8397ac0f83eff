/** Rayleigh numbers that the correlation is published for. */
export const VERTICAL_RANGE = { from: 0.1, to: 1e12 } as const

/**
 * Mean Nusselt number of an isothermal vertical surface, by its height.
 *
 *   Nu = {0.825 + 0.387 Ra^(1/6) / [1 + (0.492/Pr)^(9/16)]^(8/27)}^2
 *
 * Right where the surface is free-standing; a plug pack against a wall gives off less.
 * Source: Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1323-1329; the form V in git:CalebBell/ht, the
 * range from memory (M).
 */
export function nusseltVertical(rayleigh: number, prandtl: number): number {
  return (0.825 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2
}

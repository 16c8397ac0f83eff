/**
 * How the Prandtl number enters laminar natural convection: 0.671 / [1 + (0.492/Pr)^(9/16)]^(4/9), 0.515 for air.
 * Source: Churchill and Usagi, AIChE Journal 18 (1972) 1121-1128, as used in handbooks (V2).
 */
export const laminarConstant = (prandtl: number): number =>
  0.671 / (1 + (0.492 / prandtl) ** (9 / 16)) ** (4 / 9)

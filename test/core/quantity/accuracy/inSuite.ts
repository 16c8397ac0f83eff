/**
 * Of the 300 households that `npm run test:accuracy` measures in some five minutes, these few stand in the suite: single
 * devices (0, 40), one meter over power and current (8, 16), extreme skews (87, with copies of one draw; 282), the many.
 */
export const IN_SUITE = [0, 1, 2, 3, 8, 16, 40, 87, 282] as const

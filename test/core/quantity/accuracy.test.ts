import { describe, expect, test } from 'vitest'
import { compare } from './accuracy/comparison.ts'
import { randomRecipe } from './accuracy/randomRecipe.ts'

/**
 * Of the 300 households that `npm run test:accuracy` measures in some five minutes, these few stand in the suite: single
 * devices (0), one meter over power and current (8, 16), extreme skews (87, with copies of one draw; 282), the many.
 */
const HOUSEHOLDS = [0, 1, 2, 3, 8, 16, 40, 87, 282]
/** What README.md claims: ends in shares of the interval's width, the mean in shares of itself. */
const ENDS = 0.01
const MEAN = 0.003

describe('an interval agrees with a million stratified draws of the same model', () => {
  test.each(HOUSEHOLDS)('random household %i', (index) => {
    const { total, first } = compare(randomRecipe(index), index)
    for (const { low, high, mean } of [total, first]) {
      expect(low).toBeLessThan(ENDS)
      expect(high).toBeLessThan(ENDS)
      expect(mean).toBeLessThan(MEAN)
    }
  })
})

import { describe, expect, test } from 'vitest'
import { compare, drawnIntervals } from './accuracy/comparison.ts'
import { IN_SUITE } from './accuracy/inSuite.ts'
import { randomRecipe } from './accuracy/randomRecipe.ts'
import drawn from './accuracy/drawn.json' with { type: 'json' }

/** What README.md claims: ends in shares of the interval's width, the mean in shares of itself. */
const ENDS = 0.01
const MEAN = 0.003

describe('an interval agrees with a million stratified draws of the same model', () => {
  test.each(IN_SUITE)('random household %i', (index) => {
    const { total, first } = compare(randomRecipe(index), drawn[index])
    for (const { low, high, mean } of [total, first]) {
      expect(low).toBeLessThan(ENDS)
      expect(high).toBeLessThan(ENDS)
      expect(mean).toBeLessThan(MEAN)
    }
  })

  test('and the committed draws are what the oracle draws', () => {
    const [index] = IN_SUITE
    const anew = drawnIntervals(randomRecipe(index), index)
    for (const part of ['total', 'first'] as const)
      for (const figure of ['expected', 'low', 'high'] as const)
        expect(anew[part][figure]).toBeCloseTo(drawn[index][part][figure], 9)
  })

  test('control: the draws of another household fail', () => {
    const { total } = compare(randomRecipe(1), drawn[2])
    expect(Math.max(total.low, total.high)).toBeGreaterThan(ENDS)
  })
})

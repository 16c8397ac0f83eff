import { expect, test } from 'vitest'
import { drawDistribution } from '../../../src/core/catalogue/drawDistribution.ts'
import { drawFor } from '../../../src/core/catalogue/drawFor.ts'
import { drawSum } from '../../../src/core/catalogue/drawSums.ts'
import { modeWith } from './sampleCategory.ts'

/** More than are kept with one draw. */
const MANY = 40

test('the power of some devices of a typical draw is kept, and the same once it had to make room for others', () => {
  const draw = drawFor(modeWith(), undefined)
  const pair = drawDistribution(draw, 2)
  expect(drawDistribution(draw, 2)).toBe(pair)
  for (let quantity = 3; quantity < MANY; quantity++) drawDistribution(draw, quantity)
  const again = drawDistribution(draw, 2)
  expect(again).not.toBe(pair)
  expect([again.mean, again.meanSquare, again.quantile(0.9)]).toEqual([
    pair.mean,
    pair.meanSquare,
    pair.quantile(0.9),
  ])
})

test('a sum is worked out once for the same draws and numbers, and again once it had to make room for others', () => {
  const [one, other] = [drawFor(modeWith(), undefined), drawFor(modeWith(), undefined)]
  let made = 0
  const sum = (draws: readonly (typeof one)[], ...numbers: number[]) =>
    drawSum(draws, numbers, () => ({ expected: ++made, low: 0, high: 0 })).expected
  expect([sum([one], 1), sum([one], 1), sum([one], 2), sum([one, other], 1), sum([one], 1)]).toEqual([
    1, 1, 2, 3, 1,
  ])
  for (let number = 3; number < MANY; number++) sum([one], number)
  expect(sum([one], 1)).toBe(made)
  expect(made).toBe(3 + MANY - 3 + 1)
})

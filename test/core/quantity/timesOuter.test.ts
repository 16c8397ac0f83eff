import { describe, expect, test } from 'vitest'
import { exact } from '../../../src/core/quantity/exact.ts'
import { rectangularSum } from '../../../src/core/quantity/rectangularSum.ts'
import { SignedSum, timesOuter } from '../../../src/core/quantity/signedSum.ts'

const price = rectangularSum(0.3, 0.1)
const draw = rectangularSum(5, 1)
const sumOf = (...parts: [coefficient: number, ...factors: (typeof draw)[]][]) => {
  const sum = new SignedSum()
  for (const [coefficient, ...factors] of parts) sum.add(coefficient, factors)
  return sum
}
const product = (coefficient: number) => ({ kind: 'product', coefficient, factors: [draw, price] })

describe('a factor that multiplies all of a sum', () => {
  test('goes into a single product, on the side that this stands on', () => {
    const [up, down] = [timesOuter(sumOf([3, draw]), price), timesOuter(sumOf([-3, draw]), price)]
    expect([up.up.nodes, up.down.nodes, up.blocks]).toMatchObject([[product(3)], [], []])
    expect([down.up.nodes, down.down.nodes, down.blocks]).toMatchObject([[], [product(3)], []])
  })

  test('goes into a constant', () => {
    const times = timesOuter(sumOf([-2]), price)
    expect(times.down.nodes).toMatchObject([{ kind: 'product', coefficient: 2, factors: [price] }])
    expect(times.constant).toBe(0)
  })

  test('stays outside of more than one part, since all share it', () => {
    for (const sum of [sumOf([3, draw], [2, draw]), sumOf([3, draw], [-2, draw]), sumOf([3, draw], [1])]) {
      const { blocks, up, down } = timesOuter(sum, price)
      expect(blocks).toEqual([{ by: [price], of: sum }])
      expect([up.nodes, down.nodes]).toEqual([[], []])
    }
  })

  test('that is certain, or is not there, changes nothing', () => {
    const sum = sumOf([3, draw])
    expect([timesOuter(sum, undefined), timesOuter(sum, exact(1))]).toEqual([sum, sum])
  })
})

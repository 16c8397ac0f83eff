import { describe, expect, test } from 'vitest'
import { ownersInGroup } from '../../../src/core/population/ownersInGroup.ts'

const CASES = [
  [0.1, 2],
  [0.1, 199],
  [0.03, 400],
  [0.001, 19_000],
  [1e-9, 5_000_000_000],
] as const

describe('homes with a rare device, in groups', () => {
  test.each(CASES)(
    'ownership %d in %d homes: the mean number is exact, its variance right to 1 %%',
    (o, homes) => {
      const { groups, probabilities } = ownersInGroup(o, homes)
      const moment = (power: number) => probabilities.reduce((sum, p, owners) => sum + p * owners ** power, 0)
      expect(probabilities.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 12)
      for (const p of probabilities) expect(p).toBeGreaterThanOrEqual(0)
      expect((groups * moment(1)) / (homes * o)).toBeCloseTo(1, 10)
      const variance = groups * (moment(2) - moment(1) ** 2)
      expect(Math.abs(variance / (homes * o * (1 - o)) - 1)).toBeLessThan(0.01)
      expect(groups).toBeLessThanOrEqual(81)
    },
  )
})

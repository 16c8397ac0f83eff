import { expect, test } from 'vitest'
import { deviceEnergy } from '../../../src/core/population/deviceEnergy.ts'
import { sumOverHomes } from '../../../src/core/population/sumOverHomes.ts'

const device = deviceEnergy([{ draw: { low: 5, typical: 5, high: 5 }, kwhPerW: 8 }])

test('homes that all have the same exact device add up to one exact value', () => {
  const sum = sumOverHomes({ device, ownership: 1, countPerOwner: 1 }, 30, 1)
  expect([sum.min, sum.mean, sum.max]).toEqual([1200, 1200, 1200])
})

test('homes of which nobody has the device add up to nothing', () => {
  const sum = sumOverHomes({ device, ownership: 0, countPerOwner: 1 }, 30, 1)
  expect([sum.min, sum.max]).toEqual([0, 0])
})

import { expect, test } from 'vitest'
import { costOfSums } from '../../../src/edges/graphql/costOfSums.ts'
import { COST_OF_ONE_DEVICE, COST_OF_WIDTHS, DRAWS_PER_FIELD } from '../../../src/edges/graphql/limits.ts'
import { DRAWS } from '../../../src/schemas/estimateRequest.ts'

const home = (count: number, device: object = {}) => ({
  devices: Array.from({ length: count }, () => ({ category: 'television', ...device })),
})
const oneMode = { modes: [{ mode: 'standby' as const }] }
const drawn = { method: 'monte-carlo' as const }

test('sums that are convolved cost by the device, whatever draws were named', () => {
  expect(costOfSums(home(4))).toBe(4 * COST_OF_ONE_DEVICE)
  expect(costOfSums({ ...home(4), draws: 100_000 })).toBe(4 * COST_OF_ONE_DEVICE)
  expect(costOfSums({ ...home(4), method: 'convolution', draws: null })).toBe(4 * COST_OF_ONE_DEVICE)
})

test('sums that are drawn cost by the draw and mode, and those of a mode that may be there count', () => {
  const cost = costOfSums({ ...home(2, oneMode), ...drawn, draws: 10_000 })
  expect(cost).toBe(20_000 / DRAWS_PER_FIELD)
  expect(costOfSums({ ...home(2), ...drawn, draws: 10_000 })).toBe(5 * cost)
  expect(costOfSums({ ...home(2, oneMode), ...drawn })).toBe((2 * DRAWS.most) / DRAWS_PER_FIELD)
})

test('drawing never costs less than the devices, nor more than a request may draw', () => {
  expect(costOfSums({ ...home(100, oneMode), ...drawn, draws: 1_000 })).toBe(100 * COST_OF_ONE_DEVICE)
  expect(costOfSums({ ...home(500), ...drawn, draws: 100_000 })).toBe(DRAWS.together / DRAWS_PER_FIELD)
})

test('expected widths cost besides, by the device, however sums are worked out', () => {
  const [without, asked] = [home(4, oneMode), { ...home(4, oneMode), expectedWidths: true }]
  expect(costOfSums(asked) - costOfSums(without)).toBe(4 * COST_OF_WIDTHS)
  expect(costOfSums({ ...asked, ...drawn }) - costOfSums({ ...without, ...drawn })).toBe(4 * COST_OF_WIDTHS)
  expect(costOfSums({ ...without, expectedWidths: false })).toBe(costOfSums(without))
})

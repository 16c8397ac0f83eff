import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bestSet, type Choice } from '../../../src/core/savings/bestSet.ts'

type Units = Choice<string>[][]

const nothing: Choice<string> = { cost: 0, value: 0, parts: [] }

/** Small whole numbers, so that equals are common. */
const units = fc
  .array(
    fc.array(
      fc.tuple(
        fc.integer({ min: 0, max: 9 }),
        fc.integer({ min: -2, max: 9 }),
        fc.integer({ min: 1, max: 3 }),
      ),
      {
        maxLength: 4,
      },
    ),
    { maxLength: 6 },
  )
  .map((found): Units =>
    found.map((choices, unit) => [
      nothing,
      ...choices.map(([cost, value, count], i) => ({
        cost,
        value,
        parts: Array.from({ length: count }, (_, part) => `${unit}.${i}.${part}`),
      })),
    ]),
  )

const sum = (choices: readonly Choice<string>[]): Choice<string> => ({
  cost: choices.reduce((all, { cost }) => all + cost, 0),
  value: choices.reduce((all, { value }) => all + value, 0),
  parts: choices.flatMap(({ parts }) => parts),
})

/** Every set, one by one. */
const allSets = (from: Units): Choice<string>[] =>
  from
    .reduce<Choice<string>[][]>(
      (sets, choices) => sets.flatMap((set) => choices.map((choice) => [...set, choice])),
      [[]],
    )
    .map(sum)

const better = (a: Choice<string>, b: Choice<string>) =>
  b.value - a.value || a.parts.length - b.parts.length || a.cost - b.cost

describe('bestSet', () => {
  test('is worth as much as the best of all sets that fit, with as few parts and at as low a cost', () => {
    fc.assert(
      fc.property(units, fc.option(fc.integer({ min: 0, max: 30 })), (from, budget) => {
        const found = bestSet(from, budget)
        const best = allSets(from)
          .filter(({ cost }) => budget === null || cost <= budget)
          .toSorted(better)[0]!
        expect([found.value, found.parts.length, found.cost]).toEqual([
          best.value,
          best.parts.length,
          best.cost,
        ])
        expect(allSets(from)).toContainEqual(found)
      }),
      { numRuns: 500 },
    )
  })

  test('takes the choice that stands first where all else is equal', () => {
    const choice = (name: string) => ({ cost: 5, value: 3, parts: [name] })
    expect(bestSet([[nothing, choice('a'), choice('b')]], 5).parts).toEqual(['a'])
    expect(
      bestSet(
        [
          [nothing, choice('a')],
          [nothing, choice('b')],
        ],
        5,
      ).parts,
    ).toEqual(['b'])
    expect(
      bestSet(
        [
          [nothing, choice('a')],
          [nothing, choice('b')],
        ],
        10,
      ).parts,
    ).toEqual(['a', 'b'])
  })

  test('refuses what it could not compare exactly in time', () => {
    const many = Array.from({ length: 30 }, (_, i) => {
      const cost = 2 ** 20 + 2 ** i
      return [nothing, { cost, value: cost, parts: [`${i}`] }]
    })
    expect(() => bestSet(many, 2 ** 30)).toThrow(/ways to spend this budget/)
  })
})

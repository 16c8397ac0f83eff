import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Device } from '../../../src/core/inventory/household.ts'
import type { OfferedMeasure } from '../../../src/core/savings/savingsPlan.ts'
import type { MeasureChoice } from '../../../src/core/savings/savingsRequest.ts'
import { planFor, read } from './household.ts'

/** What the measures do, in figures of this test's own. */
const SHARE = { habit: 0.5, strip: 0.8, timer: 1 } as const
const OWN_W: Readonly<Record<string, number>> = { strip: 0.1, timer: 0.5 }
const PRICES = { strip: 10, timer: 8, new: 12 } as const

interface Case {
  readonly devices: readonly (Device & { readonly id: string })[]
  readonly budget: number
  readonly measures: readonly MeasureChoice[]
}

const MEASURES: readonly MeasureChoice[] = [
  { code: 'habit', persistence: SHARE.habit },
  { code: 'strip', persistence: SHARE.strip, price: PRICES.strip },
  { code: 'timer', price: PRICES.timer },
  { code: 'setting' },
  { code: 'new', price: PRICES.new },
]

/** Watts and hours in few sizes, so that sets of equal worth are common. */
const cases: fc.Arbitrary<Case> = fc
  .record({
    watts: fc.array(fc.tuple(fc.constantFrom(0, 2, 8), fc.constantFrom(1, 4)), {
      minLength: 1,
      maxLength: 3,
    }),
    sharesOutlet: fc.boolean(),
    budget: fc.integer({ min: 0, max: 40 }),
    measures: fc.subarray([...MEASURES], { minLength: 1 }),
  })
  .map(({ watts, sharesOutlet, budget, measures }) => ({
    devices: watts.map(([networked, standby], i) => ({
      id: `d${i}`,
      category: 'television',
      ...(sharesOutlet && { outlet: 'wall' }),
      modes: [read('networked-standby', networked, 60), read('standby', standby, 40)],
    })),
    budget,
    measures,
  }))

type Part = OfferedMeasure

const kwh = (watts: number, hours: number) => (watts * hours * 52) / 1000

/** Energy of a device after the measures at it: the new device or the setting, and then whatever cuts it off. */
function after({ modes = [] }: Device, codes: readonly string[]): number {
  let [networked, standby] = modes.map(({ reading }) =>
    reading?.kind === 'power' ? reading.watts : NaN,
  ) as [number, number]
  if (codes.includes('new')) networked = standby = 0.2
  else if (codes.includes('setting')) networked = standby
  const left =
    (codes.includes('habit') ? 1 - SHARE.habit : 1) *
    (codes.includes('strip') ? 1 - SHARE.strip : 1) *
    (codes.includes('timer') ? 1 - 56 / 100 : 1)
  return left * (kwh(networked, 60) + kwh(standby, 40))
}

const isAllowed = (codes: readonly string[]) =>
  codes.filter((code) => ['habit', 'strip', 'timer'].includes(code)).length <= 1 &&
  codes.filter((code) => ['setting', 'new'].includes(code)).length <= 1

interface Judged {
  readonly saved: number
  readonly cost: number
  readonly count: number
}

/** What a set of measures saves and costs; null where it can't be. */
function judge(set: readonly Part[], devices: Case['devices']): Judged | null {
  const codesAt = devices.map(({ id }) =>
    set.filter(({ deviceIds }) => deviceIds.includes(id)).map(({ measureCode }) => measureCode),
  )
  if (!codesAt.every(isAllowed)) return null
  const own = set.reduce((sum, { measureCode }) => sum + kwh(OWN_W[measureCode] ?? 0, 168), 0)
  const saved = devices.reduce((sum, device, i) => sum + after(device, []) - after(device, codesAt[i]!), -own)
  return { saved, cost: set.reduce((sum, { figures }) => sum + figures.price, 0), count: set.length }
}

const allSets = (parts: readonly Part[]): Part[][] =>
  parts.reduce<Part[][]>((sets, part) => [...sets, ...sets.map((set) => [...set, part])], [[]])

const TIE = 1e-5

test('the chosen set is the best of all sets of measures that a household’s budget allows', () => {
  fc.assert(
    fc.property(cases, ({ devices, budget, measures }) => {
      const found = planFor({ devices, method: 'monte-carlo', draws: 20, plan: { budget, measures } })
      const all = allSets(found.measures)
        .map((set) => judge(set, devices))
        .filter((judged): judged is Judged => judged !== null && judged.cost <= budget)
      const most = Math.max(...all.map(({ saved }) => saved))
      const fewest = Math.min(...all.filter(({ saved }) => saved > most - TIE).map(({ count }) => count))
      const chosen = judge(
        found.measures.filter((measure) => measure.chosen),
        devices,
      )
      expect(chosen).not.toBeNull()
      expect(chosen!.cost).toBeLessThanOrEqual(budget)
      expect(chosen!.saved).toBeCloseTo(most, 4)
      expect(chosen!.count).toBe(fewest)
      expect(found.plan?.figures.savedKwhPerYear.expected ?? 0).toBeCloseTo(most, 2)
    }),
    { numRuns: 100 },
  )
})

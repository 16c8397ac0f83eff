import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import type { Category, Range, TypicalDraw } from '../../../src/core/catalogue/category.ts'
import type { Visit } from '../../../src/core/verification/verification.ts'
import { verifySavings } from '../../../src/core/verification/verifySavings.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'
import { device, verify, visit } from './visits.ts'

const ZERO = { expected: 0, low: 0, high: 0 }
const widthOf = ({ low, high }: { low: number; high: number }) => high - low

describe('what two readings of current leave open', () => {
  const at = (powerFactor?: number | Range) =>
    visit(
      device('a', 100, { kind: 'current', amperes: 0.5, ...(powerFactor !== undefined && { powerFactor }) }),
    )
  const wide = { low: 0.2, typical: 0.5, high: 0.9 }
  const powerOf = (...visits: [Visit, Visit]) => verify(...visits).devices[0]!.saving.powerW

  test('cancels where both leave the same power factor open, and not where it was read or is another', () => {
    expect(powerOf(at(wide), at(wide))).toEqual(ZERO)
    expect(powerOf(at(), at())).toEqual(ZERO)
    for (const other of [
      at(0.5),
      at({ ...wide, typical: 0.6 }),
      at({ ...wide, low: 0.1 }),
      at({ ...wide, high: 1 }),
    ])
      expect(widthOf(powerOf(at(wide), other))).toBeGreaterThan(10)
  })
})

describe('a typical draw by the year of manufacture', () => {
  /** Old ones draw 8 times as much; their draw is as unsure as the factor says. */
  const dated = (factor: number): Category => {
    const draw = (typicalW: number, yearFrom: number | null, yearTo: number | null): TypicalDraw => ({
      yearFrom,
      yearTo,
      lowW: typicalW / factor,
      typicalW,
      highW: typicalW * factor,
      provenance: { kind: 'sample', citation: null, n: null },
    })
    const draws = [draw(8, null, 2009), draw(1, 2010, null)]
    const television = testCategories.find(({ code }) => code === 'television')!
    return { ...television, modes: [{ mode: 'standby', defaultHoursPerWeek: 140, draws }] }
  }
  const savedKwh = (category: Category, before: [number, object], after: [number, object]) => {
    const at = ([hours, more]: [number, object]) => visit(device('a', hours, undefined, more))
    const request = { emissionFactor: { kgCo2ePerKwh: 0.25 }, before: at(before), after: at(after) }
    return verifySavings(request, catalogueOf(1, [category]), testSettings).devices[0]!.saving
      .energyKwhPerYear
  }

  test('a year of manufacture that only one visit knew stands for both', () => {
    const unknown: [number, object] = [100, {}]
    const known: [number, object] = [100, { year: 2016 }]
    expect(savedKwh(dated(2), unknown, known)).toEqual(ZERO)
    expect(savedKwh(dated(2), known, unknown)).toEqual(ZERO)
    // Two years are two devices.
    expect(savedKwh(dated(2), [100, { year: 2005 }], known).expected).toBeGreaterThan(5)
  })

  test('hours that are gone are saved at the power of the year that is known, whichever visit knew it', () => {
    const saved = 40 * 0.052
    expect(savedKwh(dated(1), [100, {}], [60, { year: 2016 }]).expected).toBeCloseTo(saved, 9)
    expect(savedKwh(dated(1), [100, { year: 2016 }], [60, {}]).expected).toBeCloseTo(saved, 9)
  })
})

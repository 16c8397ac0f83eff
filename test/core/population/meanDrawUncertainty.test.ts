import { describe, expect, test } from 'vitest'
import type { CategoryMode, Provenance } from '../../../src/core/catalogue/category.ts'
import { meanDrawUncertainty } from '../../../src/core/population/meanDrawUncertainty.ts'
import { twoPieceLognormal } from '../../../src/core/quantity/twoPieceLognormal.ts'

const range = { low: 1, typical: 2, high: 4 }
const modeOf = (...provenances: readonly Provenance[]): CategoryMode => ({
  mode: 'standby',
  defaultHoursPerWeek: 100,
  draws: provenances.map((provenance) => ({
    yearFrom: null,
    yearTo: null,
    lowW: range.low,
    typicalW: range.typical,
    highW: range.high,
    provenance,
  })),
})
const of = (kind: Provenance['kind'], n: number | null = null): Provenance => ({ kind, citation: null, n })

describe('what is not known of a mean draw', () => {
  test('is half of a sample figure and a fifth of a published one', () => {
    expect(meanDrawUncertainty([modeOf(of('sample'))])).toEqual({ relative: 0.5, from: 'sample' })
    expect(meanDrawUncertainty([modeOf(of('published'))])).toEqual({ relative: 0.2, from: 'published' })
  })

  test('falls with the number of a programme’s readings, as the standard uncertainty of a mean does', () => {
    const { mean, meanSquare } = twoPieceLognormal(range)
    const relative = Math.sqrt(meanSquare - mean ** 2) / mean
    const { relative: found } = meanDrawUncertainty([modeOf(of('programme', 100))])
    expect(found).toBeCloseTo((Math.sqrt(3) * relative) / 10, 10)
    expect(meanDrawUncertainty([modeOf(of('programme', 400))]).relative).toBeCloseTo(found / 2, 10)
  })

  test('is never above half, and half where a programme does not say how many readings it has', () => {
    expect(meanDrawUncertainty([modeOf(of('programme', 1))]).relative).toBe(0.5)
    expect(meanDrawUncertainty([modeOf(of('programme'))]).relative).toBe(0.5)
  })

  test('is the widest of several draws and modes', () => {
    expect(meanDrawUncertainty([modeOf(of('published')), modeOf(of('published'), of('sample'))]).from).toBe(
      'sample',
    )
  })
})

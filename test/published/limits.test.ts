import { describe, expect, test } from 'vitest'
import type { Mode } from '../../src/core/catalogue/category.ts'
import { compareLimit } from '../../src/core/limits/compareLimit.ts'
import type { Limit, LimitCondition, SupplyType } from '../../src/core/limits/limit.ts'
import { limitsFor } from '../../src/core/limits/limitsFor.ts'
import { readSeed } from '../../src/readSeed.ts'

const { limits } = await readSeed()
const all = [...limits.values()]

/** Limits in the EU on a day, as `condition limit`, from official texts: (EC) 1275/2008, (EU) 801/2013, (EU) 2023/826 (V). */
const onDay = (mode: Mode, placedOnMarket: string) =>
  limitsFor(limits, { jurisdiction: 'EU', mode, placedOnMarket })
    .map(({ condition, limitW }) => `${condition} ${limitW.toFixed(2)}`)
    .sort()

const standby = (reactivation: string, display: string) => [
  `information-or-status-display ${display}`,
  `reactivation-only ${reactivation}`,
]
const networked = (high: string, other: string) => [
  `high-network-availability ${high}`,
  `other-networked ${other}`,
]

describe('off and standby in the EU (V)', () => {
  test.each([
    ['2010-01-06', [], []],
    ['2010-01-07', ['any 1.00'], standby('1.00', '2.00')],
    ['2013-01-06', ['any 1.00'], standby('1.00', '2.00')],
    ['2013-01-07', ['any 0.50'], standby('0.50', '1.00')],
    ['2025-05-08', ['any 0.50'], standby('0.50', '1.00')],
    ['2025-05-09', ['any 0.50'], standby('0.50', '0.80')],
    ['2027-05-08', ['any 0.50'], standby('0.50', '0.80')],
    ['2027-05-09', ['any 0.30'], standby('0.50', '0.80')],
  ])('on %s', (day, off, inStandby) => {
    expect(onDay('off', day)).toEqual(off)
    expect(onDay('standby', day)).toEqual(inStandby)
  })
})

describe('networked standby in the EU (V)', () => {
  test.each([
    ['2014-12-31', []],
    ['2015-01-01', networked('12.00', '6.00')],
    ['2016-12-31', networked('12.00', '6.00')],
    ['2017-01-01', networked('8.00', '3.00')],
    ['2018-12-31', networked('8.00', '3.00')],
    ['2019-01-01', networked('8.00', '2.00')],
    ['2025-05-09', networked('8.00', '2.00')],
    ['2027-05-08', networked('8.00', '2.00')],
    ['2027-05-09', networked('7.00', '2.00')],
  ])('on %s', (day, expected) => {
    expect(onDay('networked-standby', day)).toEqual(expected)
  })
})

const noLoad = (
  jurisdiction: 'EU' | 'US',
  placedOnMarket: string,
  supplyType: SupplyType,
  ratedOutputW: number,
) =>
  limitsFor(limits, { jurisdiction, mode: 'no-load', placedOnMarket, supplyType, ratedOutputW }).map(
    ({ limitW }) => limitW,
  )

describe('no-load of external power supplies', () => {
  test.each([
    ['ac-dc', 0.1, 0.21],
    ['low-voltage', 0.1, 0.21],
    ['ac-ac', 0.21, 0.21],
    ['multiple-output', 0.3, 0.3],
  ] as const)('EU, from 1 April 2020, %s: %d W up to 49 W, %d W above (V)', (supplyType, small, large) => {
    expect(noLoad('EU', '2020-03-31', supplyType, 20)).toEqual([])
    expect(noLoad('EU', '2020-04-01', supplyType, 20)).toEqual([small])
    expect(noLoad('EU', '2020-04-01', supplyType, 49)).toEqual([small])
    expect(noLoad('EU', '2020-04-01', supplyType, 49.5)).toEqual([large])
    expect(noLoad('EU', '2020-04-01', supplyType, 250)).toEqual([large])
  })

  test.each([
    ['ac-dc', 0.1, 0.21, 0.5, 'V2'],
    ['low-voltage', 0.1, 0.21, 0.5, 'V2'],
    ['ac-ac', 0.21, 0.21, 0.5, 'M'],
    ['multiple-output', 0.3, 0.3, 0.3, 'M'],
  ] as const)(
    'US, from 10 February 2016, %s: %d, %d, %d W (%s)',
    (supplyType, small, medium, large, mark) => {
      const outputs = [49, 250, 251].map((output) => noLoad('US', '2016-02-10', supplyType, output))
      expect(outputs).toEqual([[small], [medium], [large]])
      expect(noLoad('US', '2016-02-09', supplyType, 49)).toEqual([0.5])
      const own = all.filter(
        (limit) => limit.supplyType === supplyType && limit.code.startsWith('us-2016-no-load'),
      )
      expect(own.map((limit) => limit.mark)).toEqual([mark, mark, mark])
    },
  )

  test('marks III, IV and V (V2) are marks, not limits on selling', () => {
    const marks = all.filter(({ purpose }) => purpose === 'efficiency-mark')
    expect(marks.map(({ outputAboveW, outputUpToW, limitW }) => [outputAboveW, outputUpToW, limitW])).toEqual(
      [
        [0, 10, 0.5],
        [10, 250, 0.75],
        [0, 250, 0.5],
        [0, 49, 0.3],
        [49, 250, 0.5],
      ],
    )
    expect(new Set(marks.map(({ mark }) => mark))).toEqual(new Set(['V2']))
  })
})

test('the purchasing rule of 31 July 2001 is 1 W in standby (V)', () => {
  const rules = all.filter(({ purpose }) => purpose === 'purchasing')
  expect(rules.map(({ limitW, mode, appliesFrom, mark }) => [limitW, mode, appliesFrom, mark])).toEqual([
    [1, 'standby', '2001-07-31', 'V'],
  ])
})

describe('verification tolerances (V, read in the official texts)', () => {
  const allowed = (code: string) =>
    compareLimit(limits.get(code)!, { expected: 0, low: 0, high: 0 }).aboveFromW

  test.each([
    // (EC) 1275/2008, Annex III: 0.10 W up to 1.00 W, 10 % above and for networked standby
    ['eu-2010-off', 1.1],
    ['eu-2010-standby-display', 2.2],
    ['eu-2013-standby', 0.6],
    ['eu-2013-standby-display', 1.1],
    ['eu-2015-networked-high-availability', 13.2],
    ['eu-2019-networked', 2.2],
    // (EU) 2023/826, Annex V, table 1
    ['eu-2025-standby-display', 0.9],
    ['eu-2027-off', 0.4],
    ['eu-2027-networked-high-availability', 7.7],
    ['eu-2025-networked', 2.2],
    // (EU) 2019/1782, Annex III, table 1
    ['eu-2020-no-load-ac-dc-small', 0.11],
    ['eu-2020-no-load-multiple-output-large', 0.31],
    // none known
    ['us-2016-no-load-ac-dc-small', 0.1],
  ])('%s lets an authority’s test come out at %d W', (code, watts) => {
    expect(allowed(code)).toBe(watts)
  })
})

describe('every limit that is shipped', () => {
  test.each(all)(
    '$code names its source and its mark',
    ({ source, mark, toleranceSource, toleranceMark }) => {
      expect(source.length).toBeGreaterThan(15)
      expect(['V', 'V2', 'C', 'M']).toContain(mark)
      expect(toleranceSource === null).toBe(toleranceMark === null)
      // What is from memory alone says so.
      expect(mark === 'M').toBe(/^[^;]*from memory/.test(source))
    },
  )

  test('does not overlap in time with another one for the same device', () => {
    const key = ({ jurisdiction, purpose, mode, condition, supplyType, outputAboveW, outputUpToW }: Limit) =>
      JSON.stringify([jurisdiction, purpose, mode, condition, supplyType, outputAboveW, outputUpToW])
    const selling = all.filter(({ purpose }) => purpose === 'placing-on-the-market')
    const overlaps = selling.flatMap((one, i) =>
      selling
        .slice(i + 1)
        .filter(
          (other) =>
            key(one) === key(other) &&
            (one.appliesFrom ?? '') <= (other.appliesUntil ?? '9') &&
            (other.appliesFrom ?? '') <= (one.appliesUntil ?? '9'),
        )
        .map((other) => `${one.code} and ${other.code}`),
    )
    expect(overlaps).toEqual([])
  })

  test('has every condition that its mode asks about, and no other', () => {
    const conditions: Readonly<Partial<Record<Mode, readonly LimitCondition[]>>> = {
      off: ['any'],
      standby: ['any', 'reactivation-only', 'information-or-status-display'],
      'networked-standby': ['high-network-availability', 'other-networked'],
      'no-load': ['any'],
    }
    for (const { mode, condition } of all) expect(conditions[mode]).toContain(condition)
  })
})

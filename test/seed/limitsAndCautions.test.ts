import { describe, expect, test } from 'vitest'
import { parseCautionsCsv } from '../../src/schemas/cautionCsv.ts'
import { parseLimitsCsv } from '../../src/schemas/limitCsv.ts'

const placesOf = ({ faults }: { faults: readonly { line: number; column: string | null; code: string }[] }) =>
  faults.map(({ line, column, code }) => `${line} ${column} ${code}`)

describe('files of limits', () => {
  const header =
    'code,jurisdiction,purpose,regulation,annex,point,appliesFrom,appliesUntil,mode,condition,supplyType,outputAboveW,outputUpToW,limitW,toleranceW,tolerancePercent,toleranceSource,toleranceMark,source,mark'
  const rows = (...lines: readonly string[]) => parseLimitsCsv([header, ...lines].join('\n'))

  test('a row is a limit under its code; an empty cell is null', () => {
    const { entries, faults } = rows(
      'a,EU,placing-on-the-market,A law,II,1(a),2020-04-01,,no-load,any,ac-dc,0,49,0.10,0.01,,The same law,V,"A law, Annex II",V',
    )
    expect(faults).toEqual([])
    expect([...entries.values()]).toEqual([
      {
        code: 'a',
        jurisdiction: 'EU',
        purpose: 'placing-on-the-market',
        regulation: 'A law',
        annex: 'II',
        point: '1(a)',
        appliesFrom: '2020-04-01',
        appliesUntil: null,
        mode: 'no-load',
        condition: 'any',
        supplyType: 'ac-dc',
        outputAboveW: 0,
        outputUpToW: 49,
        limitW: 0.1,
        toleranceW: 0.01,
        tolerancePercent: null,
        toleranceSource: 'The same law',
        toleranceMark: 'V',
        source: 'A law, Annex II',
        mark: 'V',
      },
    ])
  })

  test('every bad row is refused by line and column', () => {
    const table = rows(
      'a,EU,placing-on-the-market,L,,,2020-02-30,,off,any,,,,0.5,,,,,s,V',
      'b,EU,placing-on-the-market,L,,,2020-01-01,2019-01-01,off,any,,,,0.5,,,,,s,V',
      'c,EU,placing-on-the-market,L,,,,,off,any,,,,0.5,0.1,,,,s,V',
      'd,EU,placing-on-the-market,L,,,,,off,any,ac-dc,,,0.5,,,,,s,V',
      'e,Mars,selling,L,,,,,off,any,,,,much,,,,,,sure',
    )
    expect(placesOf(table)).toEqual([
      '2 appliesFrom invalid-format',
      '3 appliesUntil range-out-of-order',
      '4 toleranceSource required',
      '5 supplyType supply-without-no-load',
      '6 jurisdiction invalid-value',
      '6 purpose invalid-value',
      '6 limitW invalid-type',
      '6 source invalid-type',
      '6 mark invalid-value',
    ])
    expect(table.entries.size).toBe(0)
  })
})

describe('files of cautions', () => {
  const header = 'code,message,appliesTo,source,mark'
  const rows = (...lines: readonly string[]) => parseCautionsCsv([header, ...lines].join('\n'))

  test('a row is a caution; places have a bar between, an empty mark is null', () => {
    expect(rows('b,Take care.,estimate | report,A norm,V2', 'a,Mind.,savings,common practice,')).toEqual({
      cautions: [
        {
          code: 'b',
          message: 'Take care.',
          appliesTo: ['estimate', 'report'],
          source: 'A norm',
          mark: 'V2',
        },
        { code: 'a', message: 'Mind.', appliesTo: ['savings'], source: 'common practice', mark: null },
      ],
      faults: [],
    })
  })

  test('every bad row is refused by line and column', () => {
    expect(placesOf(rows('a,,estimate,s,V', 'b,m,estimate|moon,s,V', 'c,m,,s,V', 'd,m,report,s,W'))).toEqual([
      '2 message too-small',
      '3 appliesTo invalid-value',
      '4 appliesTo too-small',
      '5 mark invalid-value',
    ])
  })
})

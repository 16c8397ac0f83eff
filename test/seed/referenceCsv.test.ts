import { describe, expect, test } from 'vitest'
import { parseEmissionFactorsCsv, parseTariffsCsv } from '../../src/schemas/referenceCsv.ts'

const tariffHeader = 'code,name,kind,currency,pricePerKwh,relativeUncertainty,source'
const factorHeader =
  'code,regionCode,region,kind,year,kgCo2ePerKwh,gridLoss,relativeUncertainty,gases,source,mark'
const placesOf = ({ faults }: { faults: readonly { line: number; column: string | null; code: string }[] }) =>
  faults.map(({ line, column, code }) => `${line} ${column} ${code}`)

describe('tariff files', () => {
  test('a row is a flat tariff under its code; only one called an invented sample is sample data', () => {
    const { entries, faults } = parseTariffsCsv(
      `${tariffHeader}\na,Made up,flat,EUR,0.3,0.1,invented sample\nb,From a bill,flat,GBP,0.25,,Own bill of May\n`,
    )
    expect(faults).toEqual([])
    expect([...entries]).toEqual([
      [
        'a',
        {
          code: 'a',
          name: 'Made up',
          retired: false,
          tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3, relativeUncertainty: 0.1 },
          source: 'invented sample',
          sampleData: true,
        },
      ],
      [
        'b',
        {
          code: 'b',
          name: 'From a bill',
          retired: false,
          tariff: { kind: 'flat', currency: 'GBP', pricePerKwh: 0.25 },
          source: 'Own bill of May',
          sampleData: false,
        },
      ],
    ])
  })

  test('every bad row is refused by line and column, and the good ones are read', () => {
    const table = parseTariffsCsv(
      `${tariffHeader}\na,A,flat,eur,0.3,,x\nb,B,flat,EUR,cheap,,x\nc,C,flat,EUR,,,\nd,D,flat,EUR,1,,x\nd,E,flat,EUR,2,,x\n`,
    )
    expect(placesOf(table)).toEqual([
      '2 currency invalid-format',
      '3 pricePerKwh invalid-type',
      '4 pricePerKwh required',
      '4 source too-small',
      '6 code code-repeated',
    ])
    expect([...table.entries.values()].map(({ name }) => name)).toEqual(['D'])
  })
})

describe('emission factor files', () => {
  test('a row is a factor under its code; an empty loss or uncertainty is not given', () => {
    const { entries, faults } = parseEmissionFactorsCsv(
      `${factorHeader}\nx-2024,x,Somewhere,marginal,2024,0.25,0.05,,CO2e,"Some report, table 3",V\ny-2024,y,Elsewhere,average,2024,0.3,,,CO2,Other report,V2\n`,
    )
    expect(faults).toEqual([])
    expect(entries.get('x-2024')).toEqual({
      code: 'x-2024',
      retired: false,
      regionCode: 'x',
      region: 'Somewhere',
      kind: 'marginal',
      year: 2024,
      factor: { kgCo2ePerKwh: 0.25, gridLoss: 0.05 },
      gases: 'CO2e',
      source: 'Some report, table 3',
      mark: 'V',
    })
    expect(entries.get('y-2024')?.factor).toEqual({ kgCo2ePerKwh: 0.3 })
  })

  test('every bad row is refused by line and column', () => {
    const rows = [
      'a,a,A,average,24,0.2,,,CO2e,s,V',
      'b,b,B,all,2024,-1,,,CO2e,s,V',
      'c,c,C,average,2024,1,0.9,,all,,true',
      'd,D',
    ]
    expect(placesOf(parseEmissionFactorsCsv([factorHeader, ...rows].join('\n')))).toEqual([
      '2 year too-small',
      '3 kind invalid-value',
      '3 kgCo2ePerKwh too-small',
      '4 gridLoss too-big',
      '4 gases invalid-value',
      '4 source too-small',
      '4 mark invalid-value',
      '5 null wrong-cell-count',
    ])
  })
})

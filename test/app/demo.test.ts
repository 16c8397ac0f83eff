import { describe, expect, test } from 'vitest'
import { compareEstimates } from '../../src/demo/compareEstimates.ts'
import { describeEstimate } from '../../src/demo/describeEstimate.ts'
import { graphqlInput } from '../../src/demo/graphqlEstimate.ts'
import { wrapText } from '../../src/demo/wrapText.ts'
import { exampleEstimate } from '../../src/edges/rest/examples.ts'
import { estimateSchema } from '../../src/schemas/estimate.ts'

const interval = { expected: 1.5, low: 1, high: 2 }
const rest = {
  currency: 'EUR',
  used: { tariff: { kind: 'flat', currency: 'EUR' } },
  devices: [{ confidence: 'partly-measured', label: null, powerW: interval }],
  total: { confidenceShares: { 'partly-measured': 1 } },
}
const graphql = {
  currency: 'EUR',
  used: { tariff: { currency: 'EUR', relativeUncertainty: null } },
  devices: [{ confidence: 'PARTLY_MEASURED', label: null, powerW: interval, apparentPowerVa: null }],
  total: { confidenceShares: { partlyMeasured: 1 } },
}

describe('compareEstimates', () => {
  test('finds no difference between the two ways of writing one estimate, and counts its figures', () => {
    expect(compareEstimates(rest, graphql)).toEqual({ figures: 4, differences: [] })
  })

  test('names every figure and flag that differs, however little, and what only one says', () => {
    const other = structuredClone(graphql)
    other.devices[0]!.powerW.high += 1e-12
    other.devices[0]!.confidence = 'ASSUMED'
    Object.assign(other.total, { energyKwhPerYear: interval })
    expect(compareEstimates(rest, other).differences).toEqual([
      '/devices/0/confidence: REST says partly-measured, GraphQL assumed',
      '/devices/0/powerW/high: REST says 2, GraphQL 2.000000000001',
      '/total/energyKwhPerYear/expected: REST says nothing, GraphQL 1.5',
      '/total/energyKwhPerYear/low: REST says nothing, GraphQL 1',
      '/total/energyKwhPerYear/high: REST says nothing, GraphQL 2',
    ])
  })
})

describe('graphqlInput', () => {
  test('writes modes as enum values, and kinds, figures and ranges as the one member of a choice', () => {
    const range = { low: 1, typical: 2, high: 3 }
    expect(
      graphqlInput({
        tariff: { kind: 'flat', pricePerKwh: 0.3 },
        devices: [
          {
            category: 'tv',
            modes: [
              {
                mode: 'networked-standby',
                hoursPerWeek: 100,
                reading: { kind: 'apparent-power', powerFactor: range },
              },
            ],
          },
        ],
      }),
    ).toEqual({
      tariff: { flat: { pricePerKwh: 0.3 } },
      devices: [
        {
          category: 'tv',
          modes: [
            {
              mode: 'NETWORKED_STANDBY',
              hoursPerWeek: { exact: 100 },
              reading: { apparentPower: { powerFactor: { range } } },
            },
          ],
        },
      ],
    })
  })
})

describe('describeEstimate', () => {
  const estimate = estimateSchema.parse(exampleEstimate)
  const [device] = estimate.devices
  const textOf = (changes: object) => describeEstimate({ ...estimate, ...changes })

  test('shows device, flag and all four figures, expected with low to high', () => {
    const labelled = { ...device!, label: 'Television', quantity: 2, powerW: interval, costPerYear: interval }
    const line = textOf({ devices: [labelled] }).find((text) => text.startsWith('Television (2)'))
    expect(line).toMatch(/^Television \(2\) +assumed +1\.50 \(1\.00-2\.00\) +.* 1\.50 \(1\.00-2\.00\) /)
  })

  test("rounds money half-even to the currency's minor unit", () => {
    const cost = { expected: 100.125, low: 0.375, high: 1234.565 }
    const of = (currency: string) =>
      textOf({ currency, total: { ...estimate.total, costPerYear: cost } }).find((line) =>
        line.startsWith('Total'),
      )
    expect(of('EUR')).toContain(' 100.12 (0.38-1234.56)')
    expect(of('JPY')).toContain(' 100 (0-1235)')
    expect(of('KWD')).toContain(' 100.125 (0.375-1234.565)')
  })

  test('breaks long labels and sentences and stays within 120 columns', () => {
    const label = 'The very long name that somebody gave to the television in the room below the roof'
    const lines = textOf({
      devices: [{ ...device!, label }],
      warnings: [{ code: 'x', message: label.repeat(4) }],
    })
    expect(lines.filter((line) => line.length > 120)).toEqual([])
    expect(lines.join(' ').replace(/\s+/g, ' ')).toContain('gave to the television in')
  })

  test('says that the catalogue is invented only where its figures were used', () => {
    expect(textOf({}).join('\n')).toContain('invented sample data.')
    expect(textOf({ sampleData: false, warnings: [] }).join('\n')).not.toContain(
      'The catalogue figures are invented',
    )
  })
})

test('wrapText breaks between words and leaves a word that is too long on a line of its own', () => {
  expect(wrapText('a bb ccc extraordinarily d', 5)).toEqual(['a bb', 'ccc', 'extraordinarily', 'd'])
})

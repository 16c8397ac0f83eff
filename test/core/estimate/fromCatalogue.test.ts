import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import type { Category, TypicalDraw } from '../../../src/core/catalogue/category.ts'
import { layeredCatalogue } from '../../../src/core/catalogue/layeredCatalogue.ts'
import { overlayOf } from '../../../src/core/catalogue/overlay.ts'
import type { NamedEmissionFactor } from '../../../src/core/emissions/emissionFactor.ts'
import { estimate } from '../../../src/core/estimate/estimateHousehold.ts'
import type { EstimateSettings } from '../../../src/core/estimate/settings.ts'
import { DomainError } from '../../../src/core/fault.ts'
import type { Device, Household } from '../../../src/core/inventory/household.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'
import { estimateOf, oneDevice } from './households.ts'

const drawOf = (
  typicalW: number,
  yearFrom: number | null = null,
  yearTo: number | null = null,
): TypicalDraw => ({
  yearFrom,
  yearTo,
  lowW: typicalW / 2,
  typicalW,
  highW: typicalW * 3,
  provenance: { kind: 'sample', citation: null, n: null },
})
const [amplifier] = testCategories
const projector: Category = {
  ...amplifier!,
  code: 'projector',
  name: 'Projector',
  modes: [
    { mode: 'standby', defaultHoursPerWeek: 100, draws: [drawOf(2, null, 2009), drawOf(1, 2015, null)] },
    { mode: 'idle', defaultHoursPerWeek: 20, draws: [drawOf(6)] },
  ],
}
const factor: NamedEmissionFactor = {
  code: 'invented',
  region: 'Nowhere',
  regionCode: 'XX',
  year: 2020,
  kind: 'average',
  gases: 'CO2e',
  mark: 'M',
  factor: { kgCo2ePerKwh: 0.4 },
  source: 'invented sample',
  retired: false,
}
const settings: EstimateSettings = {
  ...testSettings,
  emissionFactors: new Map([['invented', factor]]),
  defaultEmissionFactorCode: 'invented',
}
const catalogue = catalogueOf(3, [...testCategories, projector])
const answer = (device: Device, more: Partial<Household> = {}) =>
  estimate({ devices: [device], ...more }, catalogue, settings)
const codesOf = (warnings: readonly { code: string }[]) => warnings.map(({ code }) => code)

describe('a device that nobody read', () => {
  test('has every mode of its category at the category’s hours', () => {
    const [device] = answer({ category: 'projector', year: 2016 }).devices
    expect(device!.modes.map(({ mode, hoursPerYear, hoursFrom }) => [mode, hoursPerYear, hoursFrom])).toEqual(
      [
        ['standby', 5200, 'catalogue'],
        ['idle', 1040, 'catalogue'],
      ],
    )
    const kwh = device!.modes.reduce((sum, { energyKwhPerYear }) => sum + energyKwhPerYear.expected, 0)
    expect(device!.energyKwhPerYear.expected).toBeCloseTo(kwh, 3)
    expect(device!.powerW.expected).toBeCloseTo(kwh / 6.24, 4)
  })

  test('gives the same figures when its sum is kept, and when it is asked at hours that are not', () => {
    const at = (hoursPerWeek: number) =>
      answer({
        category: 'projector',
        year: 2016,
        modes: [{ mode: 'standby', hoursPerWeek }, { mode: 'idle' }],
      })
    expect(at(100)).toEqual(at(100))
    const odd = at(100.5)
    expect(at(100.5)).toEqual(odd)
    expect(odd.total.energyKwhPerYear.expected).toBeGreaterThan(at(100).total.energyKwhPerYear.expected)
  })

  test('averages its power over uncertain hours by what they are expected to be', () => {
    const modes = [
      { mode: 'standby', hoursPerWeek: { low: 40, typical: 80, high: 120 } },
      { mode: 'idle', hoursPerWeek: 20 },
    ] as const
    const [device] = answer({ category: 'projector', year: 2016, modes }).devices
    const [standby, idle] = device!.modes
    expect(device!.powerW.expected).toBeCloseTo(
      0.8 * standby!.powerW.expected + 0.2 * idle!.powerW.expected,
      4,
    )
  })

  test.each([
    [undefined, ['year-unknown'], ''],
    [2012, ['year-outside-figures'], ' made in 2012'],
    [2016, [], ' made in 2016'],
  ])('made in %s warns of %j', (year, codes, made) => {
    const [device] = answer({ category: 'projector', ...(year !== undefined && { year }) }).devices
    expect(codesOf(device!.warnings)).toEqual(codes)
    expect(device!.modes[0]!.origin.explanation).toContain(`Typical draw of Projector${made} in standby`)
  })

  test('says what each of its modes warns of, and nothing twice', () => {
    const later: Category = {
      ...projector,
      code: 'screen',
      modes: projector.modes.map((mode) => ({ ...mode, mode: 'standby' as const })),
    }
    const twice = { ...later, modes: [later.modes[0]!, { ...later.modes[0]!, mode: 'off' as const }] }
    const household = { devices: [{ category: 'screen' }] }
    const [device] = estimate(household, catalogueOf(1, [twice]), settings).devices
    expect(codesOf(device!.warnings)).toEqual(['year-unknown', 'year-unknown'])
    const [read] = answer({
      category: 'projector',
      modes: [
        { mode: 'standby', reading: { kind: 'current', amperes: 0.01 } },
        { mode: 'idle', reading: { kind: 'current', amperes: 0.01 } },
      ],
    }).devices
    expect(new Set(read!.warnings.map(({ message }) => message)).size).toBe(read!.warnings.length)
  })

  test('is warned of where its category is retired', () => {
    expect(codesOf(answer({ category: 'cassette-deck' }).devices[0]!.warnings)).toContain('category-retired')
  })
})

describe('a typical draw', () => {
  test('is said to be the organisation’s own where its overlay has the category, and not elsewhere', () => {
    const overlay = overlayOf('ours', 2, [{ code: 'projector', category: projector, revision: 2 }])
    const layered = layeredCatalogue(catalogue, overlay)
    const devices = [{ category: 'projector', year: 2016 }, { category: 'amplifier' }]
    const said = estimate({ devices }, layered, settings).devices.map(
      ({ modes }) => modes[0]!.origin.explanation,
    )
    expect(said[0]).toContain('an invented sample figure of the organisation’s own, not a measurement')
    expect(said[1]).toContain('an invented sample figure, not a measurement')
  })
})

describe('what the service fills in', () => {
  test('is warned of where the operator has retired it since', () => {
    const flat = { ...testSettings.tariffs.get('flat')!, retired: true }
    const retired: EstimateSettings = {
      ...settings,
      tariffs: new Map([['flat', flat]]),
      emissionFactors: new Map([['invented', { ...factor, retired: true }]]),
    }
    const { warnings } = estimate({ devices: [{ category: 'projector', year: 2016 }] }, catalogue, retired)
    expect(codesOf(warnings)).toEqual(expect.arrayContaining(['tariff-retired', 'emission-factor-retired']))
    const inUse = codesOf(answer({ category: 'projector', year: 2016 }).warnings)
    expect(inUse).not.toContain('tariff-retired')
    expect(inUse).not.toContain('emission-factor-retired')
  })

  test('is the operator’s tariff and emission factor, with their sources', () => {
    const { used, total, sampleData, warnings } = answer({ category: 'projector', year: 2016 })
    expect(used.tariffSource).toBe('flat: invented sample')
    expect(used.emissionFactorSource).toBe('invented (Nowhere, 2020, average): invented sample')
    expect(total.emissionsKgCo2ePerYear.expected).toBeCloseTo(0.4 * total.energyKwhPerYear.expected, 3)
    expect(sampleData).toBe(true)
    expect(codesOf(warnings)).toContain('sample-price')
  })

  test('is an emission factor by region and year', () => {
    const { used } = answer({ category: 'projector' }, { emissionFactorFor: { region: 'XX', year: 2020 } })
    expect(used.emissionFactor).toEqual({ kgCo2ePerKwh: 0.4 })
  })

  test('is a year’s use from that of its months', () => {
    const monthlyUseKwh = Array.from({ length: 12 }, () => 100)
    expect(answer({ category: 'projector' }, { monthlyUseKwh }).used.annualUseKwh).toBe(1200)
  })

  test('has to be known: what was not checked is refused', () => {
    for (const household of [
      { devices: [{ category: 'unheard-of' }] },
      { devices: [], tariffCode: 'unheard-of' },
      { devices: [], emissionFactorFor: { region: 'unheard-of' } },
    ])
      expect(() => estimate(household, catalogue, settings)).toThrow(DomainError)
  })
})

describe('a household whose devices use more than all of it', () => {
  test('is warned of, and one whose do not is not', () => {
    const codes = (annualUseKwh: number) =>
      codesOf(answer({ category: 'projector' }, { annualUseKwh }).warnings)
    expect(codes(1)).toContain('more-than-annual-use')
    expect(codes(5000)).not.toContain('more-than-annual-use')
  })
})

describe('the cost of a device', () => {
  test('in a currency without minor unit is a whole number', () => {
    const tariff = { kind: 'flat', currency: 'JPY', pricePerKwh: 30 } as const
    const { costPerYear } = estimateOf([oneDevice({})], { tariff }).devices[0]!
    expect(costPerYear.amounts.expected).toBe(String(Math.round(costPerYear.expected)))
    expect(costPerYear.amounts.expected).toMatch(/^\d+$/)
  })

  test('has the digits of the decimal sum where a binary product lies between two', () => {
    const accuracy = { percentOfReading: 0, counts: 0, resolution: 0.01 }
    const device = oneDevice({ hoursPerWeek: 100, reading: { kind: 'power', watts: 1, accuracy } })
    // 5.2 kWh at 0.24134615384615385 is next to 1.255, the middle between two cents.
    const tariff = { kind: 'flat', currency: 'EUR', pricePerKwh: 1.255 / 5.2 } as const
    const { amounts } = estimateOf([device], { tariff }).devices[0]!.costPerYear
    expect(['1.25', '1.26']).toContain(amounts.expected)
    expect(amounts.low).toBe(amounts.expected)
  })

  test('with small cents keeps its zeros', () => {
    const accuracy = { percentOfReading: 0, counts: 0, resolution: 0.01 }
    const device = oneDevice({ hoursPerWeek: 100, reading: { kind: 'power', watts: 1, accuracy } })
    const tariff = { kind: 'flat', currency: 'EUR', pricePerKwh: 0.01 } as const
    expect(estimateOf([device], { tariff }).devices[0]!.costPerYear.amounts.expected).toBe('0.05')
  })
})

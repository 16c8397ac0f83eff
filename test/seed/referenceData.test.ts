import { Decimal } from 'decimal.js'
import { describe, expect, test } from 'vitest'
import { readSeed } from '../../src/readSeed.ts'

const { emissionFactors, tariffs } = await readSeed()
const factorOf = (code: string) => emissionFactors.get(code)?.factor.kgCo2ePerKwh

/** 1 lb = 0.45359237 kg exactly, so lb/MWh become kg/kWh with it over 1000. */
const fromPounds = (poundsPerMwh: string) =>
  new Decimal(poundsPerMwh).times('0.45359237').div(1000).toNumber()

describe('published emission factors', () => {
  test.each([...emissionFactors.values()])('$code names its source, what it counts and its mark', (each) => {
    expect(each.source.length).toBeGreaterThan(15)
    expect(['V', 'V2', 'C', 'M']).toContain(each.mark)
    expect(each.factor.kgCo2ePerKwh).toBeGreaterThan(0.01)
    expect(each.factor.kgCo2ePerKwh).toBeLessThan(1.5)
    expect(each.factor.gridLoss !== undefined).toBe(each.source.includes('grid loss'))
    expect(each.code.endsWith('-co2')).toBe(each.gases === 'CO2')
    expect(each.code).toContain(String(each.year))
    expect(each.code.startsWith(each.regionCode)).toBe(true)
    expect(each.code.includes('non-baseload')).toBe(each.kind === 'marginal')
  })

  test('figures published in lb/MWh or g/kWh are converted exactly', () => {
    const stated = [...emissionFactors.values()].flatMap(({ source, factor }) => {
      const [, figure = '', unit = ''] = /: ([\d.]+) (lb\/MWh|g\/kWh)$/.exec(source) ?? []
      if (figure === '') return []
      return [
        [
          factor.kgCo2ePerKwh,
          unit === 'lb/MWh' ? fromPounds(figure) : new Decimal(figure).div(1000).toNumber(),
        ],
      ]
    })
    expect(stated).toHaveLength(31)
    for (const [shipped, converted] of stated) expect(shipped).toBe(converted)
  })

  // eGRID2022 and eGRID2023 rev. 2 as transcribed in public files (V2): lb/MWh, and kg/kWh as printed beside them.
  test.each([
    ['us-2022-co2', '823.1', 0.37335],
    ['us-2023-co2', '767.209', 0.348],
    ['us-2023', '770.884', 0.34967],
    ['us-camx-2023-co2', '428.464', 0.19434],
    ['us-camx-2023', '429.983', 0.19504],
    ['us-rfce-2023', '599.170', 0.27178],
    ['us-prms-2023-co2', '1543.073', 0.69993],
    ['us-prms-2023', '1548.53', 0.7024],
  ])('%s is %s lb/MWh, printed as %d kg/kWh', (code, poundsPerMwh, printed) => {
    expect(factorOf(code)).toBe(fromPounds(poundsPerMwh))
    expect(Math.abs((factorOf(code) ?? 0) - printed)).toBeLessThan(1e-5)
    expect(emissionFactors.get(code)?.mark).toBe('V2')
  })

  // GWP-100 of AR5: CH4 28 (V2), N2O 265 (from memory, M); CH4 and N2O in lb/MWh from the same eGRID2023 rows.
  // The gases are published to 0.001 lb/MWh, so that N2O alone leaves 0.0005 x 265 = 0.13 lb/MWh open.
  test.each([
    ['us-2023', 767.209 + 28 * 0.057 + 265 * 0.008],
    ['us-camx-2023', 428.464 + 28 * 0.025 + 265 * 0.003],
  ])('%s is the sum of CO2, CH4 and N2O by their warming potential', (code, poundsPerMwh) => {
    const shipped = (factorOf(code) ?? 0) / 0.00045359237
    expect(Math.abs(shipped - poundsPerMwh)).toBeLessThan(0.15)
    expect(emissionFactors.get(code)?.gases).toBe('CO2+CH4+N2O')
  })

  test('the UK factor of 2026 is the sum of its three printed parts (DESNZ 2026, V2)', () => {
    expect(factorOf('uk-2026')).toBe(new Decimal('0.12943').plus('0.00067').plus('0.00086').toNumber())
    expect(emissionFactors.get('uk-2026')?.mark).toBe('V2')
  })

  test('the UK loss of 2024 makes generation and losses the two printed figures together (DESNZ 2024, V2)', () => {
    const { factor, mark } = emissionFactors.get('uk-delivered-2024')!
    expect(factor.kgCo2ePerKwh / (1 - factor.gridLoss!)).toBeCloseTo(0.20705 + 0.0183, 14)
    expect(factor.kgCo2ePerKwh).toBe(factorOf('uk-2024'))
    expect(mark).toBe('C')
  })

  // UK: DESNZ conversion factors (V2). Australia: NGA Factors Aug 2024, scope 2 (V2). Countries and world: Ember (V).
  test.each([
    ['uk-2023', 0.207074],
    ['uk-2024', 0.20705],
    ['uk-2025', 0.177],
    ['au-vic-2024', 0.77],
    ['au-sa-2024', 0.23],
    ['au-2024', 0.63],
    ['au-residual-2024', 0.81],
    ['fr-2023', 0.056],
    ['de-2023', 0.381],
    ['world-2023', 0.481],
    ['world-2022', 0.436],
  ])('%s is %d kg/kWh', (code, published) => {
    expect(factorOf(code)).toBe(published)
  })

  test('factors for avoided use are higher than those of all generation in the same place (EPA method page, V)', () => {
    for (const place of ['akgd', 'akms', 'aznm'])
      expect(factorOf(`us-${place}-2022-non-baseload-co2`)).toBeGreaterThan(
        factorOf(`us-${place}-2022-co2`) ?? Infinity,
      )
  })
})

describe('tariffs', () => {
  test.each([...tariffs.values()])('$code is invented and says so', ({ code, name, source, sampleData }) => {
    expect(code).toMatch(/^sample-(flat|block|time-of-use|two-part)-/)
    expect([name.startsWith('Invented'), source, sampleData]).toEqual([true, 'invented sample', true])
  })

  test('come in every kind', () => {
    const kinds = new Set([...tariffs.values()].map(({ tariff }) => tariff.kind))
    expect([...kinds].sort()).toEqual(['block', 'flat', 'time-of-use', 'two-part'])
  })

  test('come in currencies with no, two and three decimals', () => {
    const currencies = [...tariffs.values()].map(({ tariff }) => tariff.currency)
    expect(currencies).toEqual(expect.arrayContaining(['EUR', 'GBP', 'USD', 'AUD', 'JPY', 'KWD']))
  })
})

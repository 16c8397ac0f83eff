import { describe, expect, test } from 'vitest'
import type { Tariff } from '../../../src/core/money/tariff.ts'
import { tariffWarnings } from '../../../src/core/money/tariffWarnings.ts'

const flat: Tariff = { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3 }
const codes = (tariff: Tariff, day?: string, retired: string | null = null) =>
  tariffWarnings(tariff, retired, day).map(({ code }) => code)

describe('what is said of a tariff that was chosen', () => {
  test('is nothing where it is in use and holds, or no day is named', () => {
    const spring = { ...flat, validFrom: '2026-03-01', validTo: '2026-05-31' }
    for (const day of ['2026-03-01', '2026-05-31', undefined]) expect(codes(spring, day)).toEqual([])
    expect(codes(flat, '1999-12-31')).toEqual([])
  })

  test('is that it does not hold, on the day before its first and the day after its last', () => {
    expect(codes({ ...flat, validFrom: '2024-02-29' }, '2024-02-28')).toEqual(['tariff-not-in-force'])
    expect(codes({ ...flat, validTo: '2024-02-29' }, '2024-03-01')).toEqual(['tariff-not-in-force'])
    expect(tariffWarnings({ ...flat, validTo: '2024-02-29' }, null, '2024-03-01')[0]!.message).toContain(
      'up to 2024-02-29, and so not on 2024-03-01',
    )
  })

  test('is that it was retired, by its code, and both where both are so', () => {
    expect(codes({ ...flat, validTo: '2024-02-29' }, '2025-01-01', 'old')).toEqual([
      'tariff-retired',
      'tariff-not-in-force',
    ])
    expect(tariffWarnings(flat, 'old', undefined)[0]!.message).toContain('old')
  })
})

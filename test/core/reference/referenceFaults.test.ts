import { describe, expect, test } from 'vitest'
import { referenceDataOf } from '../../../src/core/reference/referenceData.ts'
import { referenceFaults } from '../../../src/core/reference/referenceFaults.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { aFactor, aTariff } from '../../stores/aReference.ts'

const codes = (faults: readonly { pointer: string; code: string }[]) =>
  faults.map(({ pointer, code }) => `${pointer} ${code}`)
const known = referenceDataOf(1, [
  { entry: aFactor('here', { regionCode: 'here' }), revision: 1 },
  { entry: aFactor('gone', { regionCode: 'gone', retired: true }), revision: 1 },
])

describe('referenceFaults', () => {
  test('asks a factor for a citation, and a tariff for none', () => {
    expect(codes(referenceFaults(known, aFactor('new', { source: ' EPA ' })))).toEqual([
      '/source citation-missing',
    ])
    expect(referenceFaults(known, aFactor('new', { source: 'A report, 2025' }))).toEqual([])
    expect(referenceFaults(known, aTariff('new', { source: 'x' }))).toEqual([])
  })

  test('lets a grid have one factor of a kind, a year and what it counts', () => {
    expect(codes(referenceFaults(known, aFactor('new', { regionCode: 'here' })))).toEqual([
      '/code factor-twice',
    ])
    for (const other of [{ year: 2025 }, { kind: 'marginal' }, { gases: 'CO2' }, { retired: true }] as const)
      expect(referenceFaults(known, aFactor('new', { regionCode: 'here', ...other }))).toEqual([])
    expect(referenceFaults(known, aFactor('here', { regionCode: 'here', mark: 'C' }))).toEqual([])
    expect(referenceFaults(known, aFactor('new', { regionCode: 'gone' }))).toEqual([])
  })

  test('finds none in what the service is shipped with', async () => {
    const { tariffs, emissionFactors } = await readSeed()
    const entries = [
      ...[...tariffs.values()].map((content) => ({ kind: 'tariff', content }) as const),
      ...[...emissionFactors.values()].map((content) => ({ kind: 'emission-factor', content }) as const),
    ]
    const data = referenceDataOf(
      1,
      entries.map((entry) => ({ entry, revision: 1 })),
    )
    expect(entries.flatMap((entry) => referenceFaults(data, entry))).toEqual([])
    expect(entries.length).toBeGreaterThan(50)
  })
})

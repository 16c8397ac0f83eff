import { describe, expect, test } from 'vitest'
import { changesOfRevision, referenceChange } from '../../../src/core/reference/referenceChange.ts'
import { referenceDataOf } from '../../../src/core/reference/referenceData.ts'
import { aFactor, aTariff } from '../../stores/aReference.ts'

describe('a change of a tariff or an emission factor', () => {
  test('is added, changed, retired or restored, and names every field that differs', () => {
    const [before, retired] = [aTariff('a'), aTariff('a', { retired: true })]
    expect(referenceChange(null, before)).toMatchObject({ kind: 'added', fields: [] })
    expect(referenceChange(before, aTariff('a', { name: 'Renamed' }))).toMatchObject({
      kind: 'changed',
      fields: [{ pointer: '/name', before: 'Invented a', after: 'Renamed' }],
    })
    expect(referenceChange(before, retired)?.kind).toBe('retired')
    expect(referenceChange(retired, before)?.kind).toBe('restored')
    expect(referenceChange(before, aTariff('a'))).toBeNull()
  })

  test('a revision holds those that it made, a tariff apart from a factor of the same code', () => {
    const first = referenceDataOf(1, [
      { entry: aTariff('a'), revision: 1 },
      { entry: aFactor('a'), revision: 1 },
    ])
    const second = referenceDataOf(2, [
      { entry: aTariff('a'), revision: 1 },
      { entry: aFactor('a', { mark: 'C' }), revision: 2 },
    ])
    expect(changesOfRevision(first, second).map(({ after, fields }) => [after.kind, fields])).toEqual([
      ['emission-factor', [{ pointer: '/mark', before: 'M', after: 'C' }]],
    ])
    expect(changesOfRevision(null, first).map(({ after, kind }) => [after.kind, kind])).toEqual([
      ['tariff', 'added'],
      ['emission-factor', 'added'],
    ])
  })

  test('a revision that left an entry as it was has no change of it', () => {
    const made = referenceDataOf(2, [{ entry: aTariff('a'), revision: 2 }])
    const before = referenceDataOf(1, [{ entry: aTariff('a'), revision: 1 }])
    expect(changesOfRevision(before, made)).toEqual([])
  })

  test('an entry that the state before did not have is added', () => {
    const made = referenceDataOf(2, [{ entry: aTariff('b'), revision: 2 }])
    const [change] = changesOfRevision(referenceDataOf(1, []), made)
    expect(change).toMatchObject({ code: 'b', kind: 'added', before: null })
  })
})

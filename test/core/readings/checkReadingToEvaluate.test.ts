import { describe, expect, test } from 'vitest'
import { checkReadingToEvaluate } from '../../../src/core/readings/checkReadingToEvaluate.ts'
import { catalogue, READINGS } from './evaluation.ts'

describe('the check of a reading', () => {
  const faults = (raw: unknown) =>
    checkReadingToEvaluate(raw, catalogue).map(({ pointer, code }) => `${pointer} ${code}`)

  test('finds nothing where nothing is wrong', () => {
    expect(
      faults({
        category: 'light',
        meters: [{ id: 'm' }],
        reading: { kind: 'power', watts: 1, meterId: 'm' },
      }),
    ).toEqual([])
    expect(faults({ reading: READINGS.declared })).toEqual([])
  })

  test('names every fault at once, whatever else the shape lacks', () => {
    expect(
      faults({
        category: 'lmap',
        meters: [{ id: 'm' }, { id: 'm' }, 7],
        reading: { meterId: 'n', accuracy: {} },
      }),
    ).toEqual([
      '/category unknown-category',
      '/meters/1/id duplicate-id',
      '/reading/meterId unknown-meter',
      '/reading/meterId given-twice',
    ])
  })

  test('leaves to the schema what has no shape at all', () => {
    for (const raw of [null, 7, 'reading', [], {}]) expect(faults(raw)).toEqual([])
  })
})

import { readFile } from 'node:fs/promises'
import { describe, expect, test } from 'vitest'
import { readSeed } from '../../src/readSeed.ts'
import { parseMeasuresCsv } from '../../src/schemas/measureCsv.ts'

const seed = await readSeed()
const shipped = await readFile(new URL('../../seed/measures.csv', import.meta.url), 'utf8')
const columns = shipped.slice(0, shipped.indexOf('\n')).split(',')

const SOUND: Readonly<Record<string, string>> = {
  code: 'timer',
  name: 'Timer',
  kind: 'timer',
  price: '9',
  currency: 'EUR',
  lifeYears: '6',
  persistenceLow: '0.7',
  persistenceTypical: '0.9',
  persistenceHigh: '1',
  hoursOffPerWeek: '56',
  source: 'invented sample',
}
const parse = (changes: Readonly<Record<string, string>>) =>
  parseMeasuresCsv(
    `${columns.join(',')}\n${columns.map((column) => ({ ...SOUND, ...changes })[column] ?? '').join(',')}\n`,
  )
const faultsOf = (changes: Readonly<Record<string, string>>) =>
  parse(changes).faults.map(({ line, column, code }) => `${line} ${column} ${code}`)

describe('the measures that the service is shipped with', () => {
  test('are of every kind, and invented, every one', () => {
    const all = [...seed.measures.values()]
    expect(new Set(all.map(({ kind }) => kind)).size).toBe(5)
    expect(all.every(({ sampleData }) => sampleData)).toBe(true)
  })

  test('suit categories that there are', () => {
    const codes = new Set(seed.categories.map(({ code }) => code))
    const named = [...seed.measures.values()].flatMap(({ categories }) => categories)
    expect(named.filter((code) => !codes.has(code))).toEqual([])
    expect(named.length).toBeGreaterThan(0)
  })
})

describe('a row of measures', () => {
  test('is read with what it has, and null for what it does not', () => {
    const measure = parse({ categories: 'a | b' }).entries.get('timer')
    expect(measure).toMatchObject({
      hoursOffPerWeek: 56,
      persistence: { low: 0.7, typical: 0.9, high: 1 },
      ownDrawW: { low: 0, typical: 0, high: 0 },
      outlets: null,
      newDrawW: null,
      categories: ['a', 'b'],
      sampleData: true,
    })
    expect(parse({ source: 'a price list' }).entries.get('timer')?.sampleData).toBe(false)
  })

  test('must have the figures of its kind, and no other’s', () => {
    expect(faultsOf({ hoursOffPerWeek: '' })).toEqual(['2 hoursOffPerWeek required'])
    expect(faultsOf({ outlets: '4' })).toEqual(['2 outlets not-of-this-kind'])
    expect(faultsOf({ kind: 'setting', hoursOffPerWeek: '', fromMode: 'idle', toMode: 'idle' })).toEqual([
      '2 toMode same-mode',
    ])
  })

  test('names its faults by their column', () => {
    expect(faultsOf({ currency: '' })).toEqual(['2 currency required'])
    expect(faultsOf({ persistenceLow: '0.95' })).toEqual(['2 persistenceTypical range-out-of-order'])
    expect(faultsOf({ ownDrawTypicalW: '0.5' })).toEqual(['2 ownDrawTypicalW required'])
    expect(faultsOf({ price: 'much', lifeYears: '0' })).toEqual([
      '2 price invalid-type',
      '2 lifeYears too-small',
    ])
  })
})

import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { METER_PRESETS } from '../../src/core/readings/meterPreset.ts'
import { readSeed } from '../../src/readSeed.ts'
import { parseMeterPresetsCsv } from '../../src/schemas/meterPresetCsv.ts'

const shipped = fileURLToPath(new URL('../../seed/meter-presets.csv', import.meta.url))
const header = 'code,name,unit,percentOfReading,counts,resolution,source'
const rows = (...lines: string[]) => parseMeterPresetsCsv([header, ...lines].join('\n'))
const whole = [
  'plug-in-wattmeter,Wattmeter,W,1,2,0.1,own tests',
  'plug-in-wattmeter,Wattmeter,A,1,2,0.01,own tests',
  'clamp-true-rms,Clamp,A,1,2,0.01,own tests',
  'clamp-average-responding,Clamp,A,1,2,0.01,own tests',
  'smart-plug,Plug,W,1,2,0.1,own tests',
]
const placesOf = ({ faults }: ReturnType<typeof parseMeterPresetsCsv>) =>
  faults.map(({ line, column, code }) => `${line} ${column} ${code}`)

describe('the classes of meter that are shipped', () => {
  test('are all there, each said to be common practice without a source', async () => {
    const { meterPresets } = await readSeed()
    expect(Object.keys(meterPresets)).toEqual([...METER_PRESETS])
    for (const { source } of Object.values(meterPresets)) expect(source).toBe('common practice, no source')
  })

  test('have limits of error in every unit that such a meter shows', async () => {
    const { presets } = parseMeterPresetsCsv(await readFile(shipped, 'utf8'))
    const units = Object.values(presets!).map(({ accuracies }) => Object.keys(accuracies))
    expect(units).toEqual([['W', 'A', 'VA', 'Wh'], ['A'], ['A'], ['W', 'A', 'VA', 'Wh']])
    expect(presets!['plug-in-wattmeter'].accuracies.W).toEqual({
      percentOfReading: 2,
      counts: 2,
      resolution: 0.1,
    })
  })
})

describe('a file of classes', () => {
  test('is read with the operator’s own numbers, unit by unit', () => {
    const { presets, faults } = rows(...whole)
    expect(faults).toEqual([])
    expect(presets!['plug-in-wattmeter']).toEqual({
      code: 'plug-in-wattmeter',
      name: 'Wattmeter',
      source: 'own tests',
      accuracies: {
        W: { percentOfReading: 1, counts: 2, resolution: 0.1 },
        A: { percentOfReading: 1, counts: 2, resolution: 0.01 },
      },
    })
  })

  test('is refused with every bad row at once, by line and column', () => {
    const table = rows(
      'ruler,Ruler,W,1,2,0.1,x',
      'smart-plug,Plug,V,many,2,,x',
      'smart-plug,Plug,W,1,2,0.1,',
      'smart-plug,Plug,A,1,2,0.1,x',
      'smart-plug,Plug,A,2,2,0.1,x',
      'smart-plug',
    )
    expect(table.presets).toBeNull()
    expect(placesOf(table)).toEqual([
      '2 code invalid-value',
      '3 percentOfReading invalid-type',
      '3 resolution required',
      '3 unit invalid-value',
      '4 source too-small',
      '6 unit unit-repeated',
      '7 null wrong-cell-count',
    ])
  })

  test('is refused where a class is missing, or the one that next readings rest on has no figure in W', () => {
    expect(placesOf(rows(...whole.slice(0, 3)))).toEqual(['1 code preset-missing', '1 code preset-missing'])
    expect(placesOf(rows(...whole.slice(1)))).toEqual(['1 unit preset-missing'])
    expect(rows(...whole.slice(1)).presets).toBeNull()
  })
})

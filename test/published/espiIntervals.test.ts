import { describe, expect, test } from 'vitest'
import { termMean } from '../../src/core/quantity/term.ts'
import { powerOfEnergy } from '../../src/core/readings/powerOfEnergy.ts'
import { powerOfPower } from '../../src/core/readings/powerOfPower.ts'
import { ROUNDING, unitsOff } from './support/printed.ts'
import { context } from './support/readingContext.ts'

/*
 * Energy of smart-meter intervals as power: W = Wh x 3600 / s. Sums, minima and durations were read in the files (V), the
 * watts are C.
 *   first: git:GreenButtonAlliance/OpenESPI-Common-java@a180429 test_usage_data_01.xml, 96 intervals of 900 s
 *   second: git:cew821/greenbutton@01b8219 spec/fixtures/sample_greenbutton_data.xml, 362 intervals of 3600 s
 */
const wattsOf = (wattHours: number, seconds: number) =>
  termMean(powerOfEnergy({ kind: 'energy', wattHours, durationHours: seconds / 3600 }, context).power)

describe('ESPI interval data', () => {
  test.each([
    ['smallest interval of the first file', 273, 900, '1092'],
    ['whole day of the first file', 93_846, 96 * 900, '3910.25'],
    ['smallest interval of the second file', 510, 3600, '510'],
    ['all of the second file', 291_018, 362 * 3600, '803.917'],
  ])('[C on V] %s: %d Wh in %d s are %s W', (_, wattHours, seconds, printed) => {
    expect(unitsOff(wattsOf(wattHours, seconds), printed)).toBeLessThan(ROUNDING)
  })

  test('control: reading 900 s of watt-hours as watts gives 273 W, not 1092 W', () => {
    const asWatts = termMean(powerOfPower({ kind: 'power', watts: 273 }, context).power)
    expect(unitsOff(asWatts, '1092')).toBeGreaterThan(500)
    expect(unitsOff(wattsOf(273, 3600), '1092')).toBeGreaterThan(500)
  })
})

import { describe, expect, test } from 'vitest'
import type { Reading } from '../../../src/core/readings/reading.ts'
import type { ReadingToEvaluate } from '../../../src/core/readings/readingEvaluation.ts'
import { evaluate, limits, READINGS } from './evaluation.ts'
import { seriesOf } from './noise.ts'

describe('the assumptions', () => {
  test.each([
    ['power', READINGS.power, []],
    ['power without an accuracy', { kind: 'power', watts: 1 }, ['The meter is exact.']],
    [
      'a current',
      READINGS.current,
      ['The voltage is 230 V +-6 %.', 'The power factor is between 0.05 and 1, wide enough'],
    ],
    ['a current with everything read', { ...READINGS.current, volts: 230, powerFactor: 0.5 }, []],
    ['apparent power', READINGS['apparent-power'], ['The power factor is between 0.05 and 1']],
    ['a declared figure', READINGS.declared, ['The device draws at least half']],
    [
      'a warm surface',
      READINGS.thermal,
      [
        'The air is still',
        'The device gives off its heat',
        'The emissivity is 0.9',
        'The surface is a square',
      ],
    ],
    [
      'a warm rectangle of known emissivity',
      { ...READINGS.thermal, heightM: 0.1, emissivity: 0.95 },
      ['The air is still', 'The device gives off its heat', 'The surface is a rectangle'],
    ],
    [
      'a warm upright surface',
      { ...READINGS.thermal, heightM: 0.1, emissivity: 0.95, orientation: 'vertical' },
      ['The air is still', 'The device gives off its heat'],
    ],
  ] as const)('of %s are named', (_, reading, beginnings) => {
    const { assumptions } = evaluate({ reading })
    expect(assumptions).toHaveLength(beginnings.length)
    beginnings.forEach((beginning, i) => expect(assumptions[i]).toContain(beginning))
  })

  test('name the category whose power factor counts', () => {
    expect(evaluate({ reading: READINGS.current, category: 'lamp' }).assumptions[1]).toBe(
      'The power factor is between 0.2 and 0.6, as is usual for Lamp in a low-power mode.',
    )
  })
})

describe('the steps teach', () => {
  const words = (asked: ReadingToEvaluate) =>
    evaluate(asked).steps.map(({ what, formula, result }) => `${what} | ${formula} | ${result}`)
  const text = (asked: ReadingToEvaluate) => words(asked).join('\n')

  test('why 230 V x 0.1 A is not 23 W', () => {
    const steps = text({ reading: READINGS.current })
    expect(steps).toContain('So 230 V x 0.1 A is not 23 W')
    expect(steps).toContain('Volts times amperes is apparent power, in volt-amperes (VA)')
    expect(steps).toContain('216 to 244 V')
    expect(steps).toContain('a wide range that fits nearly any device')
    expect(steps).toContain('Q = sqrt(S^2 - P^2)')
  })

  test('whose power factor counts', () => {
    const of = (powerFactor: unknown, category?: string) =>
      text({ reading: { ...READINGS.current, powerFactor } as Reading, ...(category && { category }) })
    expect(of(undefined, 'lamp')).toContain('the range that is usual for Lamp')
    expect(of(0.5)).toContain('It was read, so one figure follows.')
    expect(of(0.5)).toContain('PF = 0.5\n')
    expect(of({ low: 0.2, typical: 0.3, high: 0.4 })).toContain('PF = 0.2 to 0.4, most likely 0.3')
  })

  test('what a splitter’s window does, and that a voltage was read', () => {
    const steps = text({
      reading: { kind: 'current', amperes: 0.54, loops: 10, volts: 231, accuracy: limits },
    })
    expect(steps).toContain('passes the jaw 10 times')
    expect(steps).toContain('0.54 A / 10 | 0.054 A')
    expect(steps).toContain('The voltage was read together with the current.')
    expect(text({ reading: READINGS.current })).toContain('passes the clamp’s jaw once')
  })

  test('how far a meter may be off, as stated, of its class or not known', () => {
    const of = (accuracy?: object) =>
      text({ reading: { kind: 'power', watts: 2, ...(accuracy && { accuracy }) } as Reading })
    expect(of({ percentOfReading: 1.5, counts: 3, resolution: 0.01 })).toContain(
      '+-(1.5 % of 2 W + 3 x 0.01 W) | 2 W +-0.06 W',
    )
    expect(of({ preset: 'smart-plug' })).toContain('those of its class count: smart plug')
    expect(of()).toContain('is not known, so its figure counts as exact')
  })

  test('what counts of a series, and whether it is stable', () => {
    const steps = text({ reading: READINGS.samples })
    expect(steps).toContain('The first third of the series is left out')
    expect(steps).toContain('allows a slope of 1 % of the power an hour')
    expect(steps).toMatch(/n_eff = \d+ independent samples/)
    const small = text({
      reading: { kind: 'samples', watts: seriesOf(900, () => 0.5), intervalSeconds: 1 },
    })
    expect(small).toContain('10 mW an hour, for up to 1 W')
    const short = text({ reading: { kind: 'samples', watts: [1, 1.1], intervalSeconds: 1 } })
    expect(short).toContain('too short')
  })

  test('that a cyclic load is taken over whole cycles', () => {
    const steps = text({
      reading: {
        kind: 'samples',
        watts: seriesOf(1800, (i) => (i % 70 < 30 ? 3 : 1)),
        intervalSeconds: 1,
      },
    })
    expect(steps).toContain('17 cycles of 70 s')
    expect(steps).toContain('mean of the later cycles - mean of the earlier')
    expect(steps).toContain('independent cycles')
  })

  test.each([
    ['vertical', 'the height counts', 'Churchill and Chu'],
    ['facing-up', 'here it faces up', 'McAdams'],
    ['facing-down', 'the warm air is held back', 'McAdams'],
  ] as const)('where the heat of a surface goes that is %s', (orientation, length, source) => {
    const steps = text({ reading: { ...READINGS.thermal, orientation } as Reading })
    expect(steps).toContain(length)
    expect(steps).toContain(source)
    expect(steps).toContain('T_film = (40 °C + 20 °C) / 2 | 30 °C')
  })

  test('what energy over time is, and what a label is worth', () => {
    expect(text({ reading: READINGS.energy })).toContain('P = E / t = 18 Wh / 12 h | 1.5 W')
    expect(text({ reading: READINGS.declared })).toContain('1 W <= P <= 2 W')
    expect(text({ reading: READINGS.power })).toContain('multiplies voltage and current at every instant')
  })
})

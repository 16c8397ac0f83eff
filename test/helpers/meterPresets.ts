import type { MeterPreset, MeterPresets } from '../../src/core/readings/meterPreset.ts'

const preset = <Code extends MeterPreset['code'], Accuracies extends MeterPreset['accuracies']>(
  code: Code,
  name: string,
  accuracies: Accuracies,
) => ({ code, name, accuracies, source: 'invented for the tests' })

/** Classes of meter with figures of their own, so that no test rests on the operator's file. */
export const meterPresets: MeterPresets = {
  'plug-in-wattmeter': preset('plug-in-wattmeter', 'plug-in wattmeter', {
    W: { percentOfReading: 2, counts: 2, resolution: 0.1 },
    Wh: { percentOfReading: 2, counts: 2, resolution: 1 },
  }),
  'clamp-true-rms': preset('clamp-true-rms', 'clamp meter, true-RMS', {
    A: { percentOfReading: 2, counts: 5, resolution: 0.01 },
  }),
  'clamp-average-responding': preset('clamp-average-responding', 'clamp meter, average-responding', {
    A: { percentOfReading: 3, counts: 5, resolution: 0.01 },
  }),
  'smart-plug': preset('smart-plug', 'smart plug', {
    W: { percentOfReading: 3, counts: 5, resolution: 0.1 },
  }),
}

import type { MeterPresetCode } from '../../../core/readings/meterPreset.ts'
import type { Orientation, Reading } from '../../../core/readings/reading.ts'
import type { SeriesAnalysis } from '../../../core/readings/series/analyseSeries.ts'
import { enumOf } from '../enumOf.ts'

export const MeterPresetEnum = enumOf<MeterPresetCode>(
  'MeterPreset',
  "Class of meter, with limits of error as common practice has them; the operator's to edit.",
  {
    'plug-in-wattmeter': 'Wattmeter between plug and outlet.',
    'clamp-true-rms': 'Clamp meter that is right for any shape of current.',
    'clamp-average-responding': 'Clamp meter that is right for sine waves only.',
    'smart-plug': 'Switchable plug that measures.',
  },
)

export const OrientationEnum = enumOf<Orientation>('Orientation', 'Where a warm surface faces.', {
  vertical: 'To the side: it stands upright.',
  'facing-up': 'Up: the air rises off it.',
  'facing-down': 'Down: the warm air is held back under it.',
})

export const ReadingKindEnum = enumOf<Reading['kind']>('ReadingKind', 'What somebody read.', {
  power: 'Real power.',
  energy: 'Energy over a time.',
  samples: 'A series of power samples.',
  current: 'Current.',
  'apparent-power': 'Apparent power.',
  declared: 'Label or data sheet.',
  thermal: 'Warmth of a surface.',
})

export const VerdictEnum = enumOf<SeriesAnalysis['verdict']>(
  'Verdict',
  'What the stability rule of IEC 62301:2011 5.3.2 says of a series (from memory).',
  {
    stable: 'The power hardly changes.',
    unstable: 'The power changes by more than the rule allows.',
    'too-short': 'Below 15 minutes, or below four cycles: nothing can be said.',
  },
)

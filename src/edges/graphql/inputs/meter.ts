import { builder } from '../builder.ts'
import { MeterPresetEnum } from '../types/readingEnums.ts'

const percent = 'Percent part of the limit of error, % of the reading; shared by all readings of one meter.'
const counts = 'Count part of the limit of error, in counts; independent for each reading.'
const resolution = "Size of one count, in the reading's own unit (W, Wh, A or VA)."
const preset = 'Class of meter, in place of the three figures, for whoever does not have the manual.'

export const AccuracyInput = builder.inputType('AccuracyInput', {
  description:
    "A meter's stated limit of error, +-(percentOfReading % + counts x resolution), all three; or its class alone.",
  fields: (t) => ({
    percentOfReading: t.float({ description: percent }),
    counts: t.float({ description: counts }),
    resolution: t.float({ description: resolution }),
    preset: t.field({ type: MeterPresetEnum, description: preset }),
  }),
})

export const MeterInput = builder.inputType('MeterInput', {
  description:
    'A meter that readings of this request name: with its stated limit of error, all three figures, or its class.',
  fields: (t) => ({
    id: t.string({ required: true, description: 'Name within this request.' }),
    percentOfReading: t.float({ description: percent }),
    counts: t.float({ description: counts }),
    resolution: t.float({ description: resolution }),
    preset: t.field({ type: MeterPresetEnum, description: preset }),
  }),
})

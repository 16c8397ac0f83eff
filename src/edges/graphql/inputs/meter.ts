import { builder } from '../builder.ts'

const percent = 'Percent part of the limit of error, % of the reading; shared by all readings of one meter.'
const counts = 'Count part of the limit of error, in counts; independent for each reading.'
const resolution = "Size of one count, in the reading's own unit (W, Wh, A or VA)."

export const AccuracyInput = builder.inputType('AccuracyInput', {
  description: "A meter's stated limit of error: +-(percentOfReading % + counts x resolution).",
  fields: (t) => ({
    percentOfReading: t.float({ required: true, description: percent }),
    counts: t.float({ required: true, description: counts }),
    resolution: t.float({ required: true, description: resolution }),
  }),
})

export const MeterInput = builder.inputType('MeterInput', {
  description: 'A meter that readings of this request name.',
  fields: (t) => ({
    id: t.string({ required: true, description: 'Name within this request.' }),
    percentOfReading: t.float({ required: true, description: percent }),
    counts: t.float({ required: true, description: counts }),
    resolution: t.float({ required: true, description: resolution }),
  }),
})

import { builder } from '../builder.ts'
import { AccuracyInput } from './meter.ts'
import { ExactOrRangeInput } from './range.ts'

const meterId = 'Meter in `meters` that was read; not together with `accuracy`.'
const accuracy = 'Accuracy of this reading where no meter is named.'
const powerFactor = "Power factor, above 0 to 1; the category's range where it was not read."

const PowerReadingInput = builder.inputType('PowerReadingInput', {
  description: 'Real power, as a wattmeter shows it.',
  fields: (t) => ({
    watts: t.float({ required: true, description: 'Real power, W.' }),
    meterId: t.string({ description: meterId }),
    accuracy: t.field({ type: AccuracyInput, description: accuracy }),
  }),
})

const EnergyReadingInput = builder.inputType('EnergyReadingInput', {
  description: 'Energy over a time, as an energy meter shows it.',
  fields: (t) => ({
    wattHours: t.float({ required: true, description: 'Energy, Wh.' }),
    durationHours: t.float({ required: true, description: 'Time that it was counted over, h.' }),
    meterId: t.string({ description: meterId }),
    accuracy: t.field({ type: AccuracyInput, description: accuracy }),
  }),
})

const CurrentReadingInput = builder.inputType('CurrentReadingInput', {
  description:
    'Current, as a clamp meter shows it. Without a power factor it gives a range of watts, never one figure.',
  fields: (t) => ({
    amperes: t.float({ required: true, description: 'Current as shown (rms), A.' }),
    loops: t.int({
      description:
        "How often the conductor passes the clamp; a line splitter's x10 window is 10; 1 by default.",
    }),
    volts: t.float({ description: "Voltage read at the same time (rms), V; the supply's by default." }),
    powerFactor: t.field({ type: ExactOrRangeInput, description: powerFactor }),
    meterId: t.string({ description: meterId }),
    accuracy: t.field({ type: AccuracyInput, description: accuracy }),
  }),
})

const ApparentPowerReadingInput = builder.inputType('ApparentPowerReadingInput', {
  description: 'Apparent power. Without a power factor it gives a range of watts, never one figure.',
  fields: (t) => ({
    voltAmperes: t.float({ required: true, description: 'Apparent power, VA.' }),
    powerFactor: t.field({ type: ExactOrRangeInput, description: powerFactor }),
    meterId: t.string({ description: meterId }),
    accuracy: t.field({ type: AccuracyInput, description: accuracy }),
  }),
})

const DeclaredReadingInput = builder.inputType('DeclaredReadingInput', {
  description:
    'Power from a label or a data sheet: a ceiling, taken as anything between half of it and all of it.',
  fields: (t) => ({
    watts: t.float({ required: true, description: 'Declared power, W.' }),
  }),
})

export const ReadingInput = builder.inputType('ReadingInput', {
  description: 'What somebody measured or read off a label, before any conversion: exactly one kind.',
  isOneOf: true,
  fields: (t) => ({
    power: t.field({ type: PowerReadingInput, description: 'Real power.' }),
    energy: t.field({ type: EnergyReadingInput, description: 'Energy over a time.' }),
    current: t.field({ type: CurrentReadingInput, description: 'Current.' }),
    apparentPower: t.field({ type: ApparentPowerReadingInput, description: 'Apparent power.' }),
    declared: t.field({ type: DeclaredReadingInput, description: 'Label or data sheet.' }),
  }),
})

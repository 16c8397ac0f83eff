import { builder } from '../builder.ts'
import { OrientationEnum } from '../types/readingEnums.ts'
import { MOST_SAMPLES } from '../../../schemas/reading.ts'
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

const SamplesReadingInput = builder.inputType('SamplesReadingInput', {
  description:
    'Real power, sampled at one interval while nobody touches the device. Judged by the stability rule of IEC 62301.',
  fields: (t) => ({
    watts: t.floatList({
      required: true,
      description: `Real power, W, one sample after the other: 2 to ${MOST_SAMPLES}, in all readings together.`,
    }),
    intervalSeconds: t.float({
      required: true,
      description: 'Time from one sample to the next, s, above 0 to 3600.',
    }),
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

const ThermalReadingInput = builder.inputType('ThermalReadingInput', {
  description: 'How warm a surface is: an indication of power, to +-30 %.',
  fields: (t) => ({
    surfaceTemperatureC: t.float({
      required: true,
      description: 'Temperature of the surface, °C, above that of the room.',
    }),
    ambientTemperatureC: t.float({
      required: true,
      description: 'Temperature of the air and of what is around, °C.',
    }),
    areaM2: t.float({ required: true, description: 'Area of the warm surface, m², 0.0001 to 10.' }),
    heightM: t.float({
      description:
        'Height of a vertical surface, one side of a horizontal one, m, 0.005 to 5; a square by default.',
    }),
    orientation: t.field({
      type: OrientationEnum,
      required: true,
      description: 'Where the surface faces.',
    }),
    emissivity: t.float({ description: 'Emissivity, 0.02 to 1; 0.9 by default.' }),
  }),
})

export const ReadingInput = builder.inputType('ReadingInput', {
  description: 'What somebody measured or read off a label, before any conversion: exactly one kind.',
  isOneOf: true,
  fields: (t) => ({
    power: t.field({ type: PowerReadingInput, description: 'Real power.' }),
    energy: t.field({ type: EnergyReadingInput, description: 'Energy over a time.' }),
    samples: t.field({ type: SamplesReadingInput, description: 'A series of power samples.' }),
    current: t.field({ type: CurrentReadingInput, description: 'Current.' }),
    apparentPower: t.field({ type: ApparentPowerReadingInput, description: 'Apparent power.' }),
    declared: t.field({ type: DeclaredReadingInput, description: 'Label or data sheet.' }),
    thermal: t.field({ type: ThermalReadingInput, description: 'Warmth of a surface.' }),
  }),
})

import type { DeviceMode, Household } from '../../../core/inventory/household.ts'
import type { MeterPresetCode } from '../../../core/readings/meterPreset.ts'
import type { MeteredReading } from '../../../core/readings/reading.ts'
import { builder } from '../builder.ts'
import { RangeType } from './common.ts'
import { ModeEnum } from './enums.ts'
import { rangeOfHours } from './quizQuestion.ts'
import { MeterPresetEnum, ReadingKindEnum } from './readingEnums.ts'

/** Of the readings that answers can hold, each has some of the figures. */
type Figures = Partial<Record<'watts' | 'wattHours' | 'durationHours' | 'voltAmperes' | 'amperes', number>>
type Reading = Pick<MeteredReading, 'kind'> & {
  readonly accuracy: { readonly preset: MeterPresetCode }
} & Figures

const QuizMeterType = builder.objectRef<Reading['accuracy']>('QuizMeter').implement({
  description: 'The meter that is supposed, since nobody is asked for its manual.',
  fields: (t) => ({ preset: t.expose('preset', { type: MeterPresetEnum, description: 'Its class.' }) }),
})

const QuizReadingType = builder.objectRef<Reading>('QuizReading').implement({
  description: 'A reading as an estimate takes it; figures of other kinds are null.',
  fields: (t) => ({
    kind: t.expose('kind', { type: ReadingKindEnum, description: 'The kind.' }),
    watts: t.exposeFloat('watts', { nullable: true, description: 'Real power, W.' }),
    wattHours: t.exposeFloat('wattHours', { nullable: true, description: 'Energy, Wh.' }),
    durationHours: t.exposeFloat('durationHours', {
      nullable: true,
      description: 'Time that it was counted over, h.',
    }),
    voltAmperes: t.exposeFloat('voltAmperes', { nullable: true, description: 'Apparent power, VA.' }),
    amperes: t.exposeFloat('amperes', { nullable: true, description: 'Current, A.' }),
    accuracy: t.expose('accuracy', { type: QuizMeterType, description: 'How right the meter is.' }),
  }),
})

const QuizDeviceModeType = builder.objectRef<DeviceMode>('QuizDeviceMode').implement({
  description: 'A mode of a device as an estimate takes it.',
  fields: (t) => ({
    mode: t.expose('mode', { type: ModeEnum, description: 'The mode.' }),
    hoursPerWeek: t.field({
      type: RangeType,
      nullable: true,
      description: 'Hours a week, h; null leaves them to the catalogue.',
      resolve: ({ hoursPerWeek }) => rangeOfHours(hoursPerWeek),
    }),
    reading: t.field({
      type: QuizReadingType,
      nullable: true,
      description: 'What was read; null is a typical draw from the catalogue.',
      resolve: ({ reading }) => (reading as Reading | undefined) ?? null,
    }),
  }),
})

const QuizDeviceType = builder.objectRef<Household['devices'][number]>('QuizDevice').implement({
  description: 'A device as an estimate takes it.',
  fields: (t) => ({
    id: t.exposeString('id', { nullable: true, description: 'Place of its answer: answer-1 is the first.' }),
    label: t.exposeString('label', { nullable: true, description: 'What it is called.' }),
    category: t.exposeString('category', { description: 'Code of its category.' }),
    quantity: t.exposeInt('quantity', { nullable: true, description: 'How many there are.' }),
    year: t.exposeInt('year', { nullable: true, description: 'Year of manufacture.' }),
    modes: t.field({
      type: [QuizDeviceModeType],
      nullable: true,
      description: 'Its modes; null leaves them to the catalogue.',
      complexity: { field: 1, multiplier: 2 },
      resolve: ({ modes }) => modes ?? null,
    }),
  }),
})

export const QuizHouseholdType = builder.objectRef<Household>('QuizHousehold').implement({
  description: 'What answers were turned into; `estimate` takes the same.',
  fields: (t) => ({
    catalogueRevision: t.exposeInt('catalogueRevision', {
      nullable: true,
      description: 'Revision that it is estimated by.',
    }),
    tariffCode: t.exposeString('tariffCode', { nullable: true, description: 'Tariff, where one was named.' }),
    emissionFactorCode: t.exposeString('emissionFactorCode', {
      nullable: true,
      description: 'Emission factor, where one was named.',
    }),
    devices: t.field({
      type: [QuizDeviceType],
      description: 'What was counted.',
      resolve: ({ devices }) => devices,
    }),
  }),
})

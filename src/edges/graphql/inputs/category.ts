import { builder } from '../builder.ts'
import { GroupEnum, KeepPoweredReasonEnum, ModeEnum, ProvenanceKindEnum } from '../types/enums.ts'
import { RangeInput } from './range.ts'

const ProvenanceInput = builder.inputType('ProvenanceInput', {
  description: 'Where a figure comes from.',
  fields: (t) => ({
    kind: t.field({ type: ProvenanceKindEnum, required: true, description: 'Kind of origin.' }),
    citation: t.string({ description: 'Publication; needed of a published figure.' }),
    n: t.int({ description: "Number of readings; needed of a programme's figure." }),
  }),
})

const TypicalDrawInput = builder.inputType('TypicalDrawInput', {
  description: '5th, 50th and 95th percentile over devices in use, W; lowW <= typicalW <= highW.',
  fields: (t) => ({
    yearFrom: t.int({ description: 'First year of manufacture; open where it is left out.' }),
    yearTo: t.int({ description: 'Last year of manufacture; open where it is left out.' }),
    lowW: t.float({ required: true, description: '5th percentile, W.' }),
    typicalW: t.float({ required: true, description: '50th percentile, W.' }),
    highW: t.float({ required: true, description: '95th percentile, W.' }),
    provenance: t.field({
      type: ProvenanceInput,
      required: true,
      description: 'Where the figures come from.',
    }),
  }),
})

const CategoryModeInput = builder.inputType('CategoryModeInput', {
  description: 'A low-power mode that devices of the category have.',
  fields: (t) => ({
    mode: t.field({ type: ModeEnum, required: true, description: 'The mode.' }),
    defaultHoursPerWeek: t.float({
      required: true,
      description:
        'Hours a week (h) in this mode where a request names none; all modes together at most 168.',
    }),
    draws: t.field({
      type: [TypicalDrawInput],
      required: true,
      description: 'Typical draws; their years neither overlap nor leave holes.',
    }),
  }),
})

const KeepPoweredInput = builder.inputType('KeepPoweredInput', {
  description: 'That devices of the category must stay powered, and why.',
  fields: (t) => ({
    reason: t.field({ type: KeepPoweredReasonEnum, required: true, description: 'Kind of reason.' }),
    note: t.string({ required: true, description: 'What could happen otherwise, in a sentence.' }),
  }),
})

export const CategoryInput = builder.inputType('CategoryInput', {
  description: 'A category that there is none of yet.',
  fields: (t) => ({
    code: t.string({ required: true, description: 'Stable name in kebab-case; never used before.' }),
    name: t.string({ required: true, description: 'Name in plain words.' }),
    group: t.field({ type: GroupEnum, required: true, description: 'Part of the household.' }),
    aliases: t.stringList({
      required: true,
      description: 'Other names that the category is found by; none that another one has.',
    }),
    defaultQuantity: t.int({
      required: true,
      description: 'Number of devices where a request names none.',
    }),
    keepPowered: t.field({
      type: KeepPoweredInput,
      description: 'Why such devices must stay powered; left out where they need not.',
    }),
    powerFactor: t.field({
      type: RangeInput,
      required: true,
      description: 'Power factor (above 0 to 1, no unit) where none was read.',
    }),
    modes: t.field({ type: [CategoryModeInput], required: true, description: 'The low-power modes.' }),
  }),
})

export const CategoryChangesInput = builder.inputType('CategoryChangesInput', {
  description:
    'What is to change; what is left out stays as it is. Lists are replaced as a whole. keepPowered: null takes it away.',
  fields: (t) => ({
    name: t.string({ description: 'Name in plain words.' }),
    group: t.field({ type: GroupEnum, description: 'Part of the household.' }),
    aliases: t.stringList({ description: 'Other names that the category is found by.' }),
    defaultQuantity: t.int({ description: 'Number of devices where a request names none.' }),
    keepPowered: t.field({
      type: KeepPoweredInput,
      description: 'Why such devices must stay powered; null where they need not any more.',
    }),
    powerFactor: t.field({
      type: RangeInput,
      description: 'Power factor (above 0 to 1, no unit) where none was read.',
    }),
    modes: t.field({ type: [CategoryModeInput], description: 'The low-power modes.' }),
  }),
})

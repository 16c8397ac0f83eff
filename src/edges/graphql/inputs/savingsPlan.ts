import { builder } from '../builder.ts'
import { ModeEnum } from '../types/enums.ts'
import { PlanGoalEnum } from '../types/savingsEnums.ts'
import { EmissionFactorInput, householdFields } from './estimate.ts'
import { ExactOrRangeInput } from './range.ts'
import { TariffInput } from './tariff.ts'

const MeasureChoiceInput = builder.inputType('MeasureChoiceInput', {
  description: "A measure that is available, with figures of the household in place of the service's.",
  fields: (t) => ({
    code: t.string({ required: true, description: 'Code of one of `savingsMeasures`.' }),
    price: t.float({ description: "Price of one piece, in the tariff's currency." }),
    lifeYears: t.float({ description: 'How long it lasts, years.' }),
    persistence: t.field({
      type: ExactOrRangeInput,
      description: 'Share of what it could save that it saves over its life, 0 to 1.',
    }),
    ownDrawW: t.field({
      type: ExactOrRangeInput,
      description: 'What it draws itself, all hours of the year, W.',
    }),
    ratedLoadW: t.float({ description: 'Of a strip: the load that it may carry, W.' }),
    ratedLoadA: t.float({ description: 'The same in A.' }),
    outlets: t.int({ description: 'Of a strip: plugs that it takes.' }),
    hoursOffPerWeek: t.float({ description: 'Of a timer: hours a week that it keeps the device off, h.' }),
    fromMode: t.field({ type: ModeEnum, description: 'Of a setting: the mode that hours leave.' }),
    toMode: t.field({ type: ModeEnum, description: 'Of a setting: the mode that they go to.' }),
    newDrawW: t.field({
      type: ExactOrRangeInput,
      description: 'Of a replacement: what the new device draws in the modes of the old one, W.',
    }),
    devices: t.stringList({
      description: 'Ids of the devices that it is for; all that it suits by default.',
    }),
  }),
})

const PlanDeviceInput = builder.inputType('PlanDeviceInput', {
  description: 'What a plan has to know of a device besides its inventory.',
  fields: (t) => ({
    deviceId: t.string({ required: true, description: 'Id of the device.' }),
    ratedWatts: t.float({ required: true, description: 'What its label says that it takes at most, W.' }),
  }),
})

export const SavingsPlanOptionsInput = builder.inputType('SavingsPlanOptionsInput', {
  description: 'What may be spent, and what is available.',
  fields: (t) => ({
    budget: t.float({ description: "What may be spent, in the tariff's currency; no bound by default." }),
    goal: t.field({
      type: PlanGoalEnum,
      description: '`MOST_ENERGY` by default with a budget, `MOST_MONEY_AFTER_COST` without.',
    }),
    measures: t.field({
      type: [MeasureChoiceInput],
      description: 'What is available; all that the service has by default.',
    }),
    devices: t.field({ type: [PlanDeviceInput], description: 'Rated loads, to be added up for strips.' }),
    outletsWithStrip: t.stringList({ description: 'Outlets that have a power strip already.' }),
    marginalFactor: t.field({
      type: EmissionFactorInput,
      description: 'Emissions of the power stations that would generate less.',
    }),
    marginalFactorCode: t.string({ description: 'The same, by the code of a marginal emission factor.' }),
  }),
})

export const SavingsPlanInput = builder.inputType('SavingsPlanInput', {
  description:
    'One household, of at most 100 entries, and what it could do; null is the same as absent. Fault pointers in error extensions are JSON Pointers into this input.',
  fields: (t) => ({
    ...householdFields(t),
    tariff: t.field({ type: TariffInput, description: 'Price structure; not together with `tariffCode`.' }),
    tariffCode: t.string({
      description: "Code of a tariff that the service knows; the operator's setting by default.",
    }),
    plan: t.field({ type: SavingsPlanOptionsInput, description: 'Options of the plan.' }),
  }),
})

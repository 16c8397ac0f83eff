import type { Saving, SavingParts } from '../../../core/verification/verification.ts'
import { builder } from '../builder.ts'
import { IntervalType } from './interval.ts'
import { MoneyIntervalType } from './moneyInterval.ts'

const At68PercentType = builder.objectRef<Saving['at68Percent']>('SavingAt68Percent').implement({
  description: 'How sure a saving is at the coverage that ASHRAE Guideline 14 speaks of.',
  fields: (t) => ({
    fractionalSavingsUncertainty: t.exposeFloat('fractionalSavingsUncertainty', {
      nullable: true,
      description: 'Fractional savings uncertainty at a coverage of 0.68; null where nothing was saved.',
    }),
    below50Percent: t.exposeBoolean('below50Percent', {
      nullable: true,
      description: 'Whether it is below 0.5, as the guideline asks; null where nothing was saved.',
    }),
  }),
})

export const SavingType = builder.objectRef<Saving>('Saving').implement({
  description: 'What was saved between two visits, before less after: above zero is saved.',
  fields: (t) => ({
    powerW: t.expose('powerW', {
      type: IntervalType,
      description:
        'Power, W: of a device averaged over the hours counted at each visit, of a total averaged over the whole year.',
    }),
    energyKwhPerYear: t.expose('energyKwhPerYear', {
      type: IntervalType,
      description: 'Energy, kWh a year.',
    }),
    costPerYear: t.expose('costPerYear', { type: MoneyIntervalType, description: 'Cost a year.' }),
    emissionsKgCo2ePerYear: t.expose('emissionsKgCo2ePerYear', {
      type: IntervalType,
      description: 'Emissions, kg CO2e a year.',
    }),
    largerThanNoise: t.exposeBoolean('largerThanNoise', {
      description: 'Whether the interval of the energy leaves out zero.',
    }),
    fractionalSavingsUncertainty: t.exposeFloat('fractionalSavingsUncertainty', {
      nullable: true,
      description:
        "Half of the width of the energy's interval over its mean; null where nothing was saved on average.",
    }),
    at68Percent: t.expose('at68Percent', {
      type: At68PercentType,
      description: 'The same at a coverage of 0.68.',
    }),
  }),
})

export const SavingPartsType = builder.objectRef<SavingParts>('SavingParts').implement({
  description: 'What a saving of energy consists of, kWh a year; the two add up to it.',
  fields: (t) => ({
    powerEffect: t.expose('powerEffect', {
      type: IntervalType,
      description: 'Change of power at the hours before.',
    }),
    hoursEffect: t.expose('hoursEffect', {
      type: IntervalType,
      description: 'Change of hours at the power after.',
    }),
  }),
})

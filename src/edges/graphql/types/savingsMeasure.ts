import type { Measure } from '../../../core/savings/measure.ts'
import { builder } from '../builder.ts'
import { SHORT_LIST } from '../limits.ts'
import { RangeType } from './common.ts'
import { ModeEnum } from './enums.ts'
import { MeasureKindEnum } from './savingsEnums.ts'

export const SavingsMeasureType = builder.objectRef<Measure>('SavingsMeasure').implement({
  description: 'Something that a household can do about standby, with its figures.',
  fields: (t) => ({
    code: t.exposeString('code', { description: 'Stable name.' }),
    name: t.exposeString('name', { description: 'Name for people.' }),
    kind: t.expose('kind', { type: MeasureKindEnum, description: 'What is done.' }),
    price: t.exposeFloat('price', { description: 'Price of one piece.' }),
    currency: t.exposeString('currency', {
      nullable: true,
      description: 'ISO 4217 code; null where it costs nothing.',
    }),
    lifeYears: t.exposeFloat('lifeYears', { description: 'How long it lasts, years.' }),
    persistence: t.expose('persistence', {
      type: RangeType,
      description: 'Share of what it could save that it saves over its life, 0 to 1.',
    }),
    ownDrawW: t.expose('ownDrawW', {
      type: RangeType,
      description: 'What it draws itself, all hours of the year, W.',
    }),
    ratedLoadW: t.exposeFloat('ratedLoadW', {
      nullable: true,
      description: 'Of a strip: the load that it may carry, W.',
    }),
    ratedLoadA: t.exposeFloat('ratedLoadA', { nullable: true, description: 'The same in A.' }),
    outlets: t.exposeInt('outlets', { nullable: true, description: 'Of a strip: plugs that it takes.' }),
    hoursOffPerWeek: t.exposeFloat('hoursOffPerWeek', {
      nullable: true,
      description: 'Of a timer: hours a week that it keeps the device off, h.',
    }),
    fromMode: t.expose('fromMode', {
      type: ModeEnum,
      nullable: true,
      description: 'Of a setting: the mode that hours leave.',
    }),
    toMode: t.expose('toMode', {
      type: ModeEnum,
      nullable: true,
      description: 'Of a setting: the mode that they go to.',
    }),
    newDrawW: t.expose('newDrawW', {
      type: RangeType,
      nullable: true,
      description: 'Of a replacement: what the new device draws in the modes of the old one, W.',
    }),
    categories: t.stringList({
      description: 'Codes of the categories that it suits; all where none is named.',
      complexity: SHORT_LIST,
      resolve: ({ categories }) => [...categories],
    }),
    source: t.exposeString('source', { description: 'Where its figures are from.' }),
    sampleData: t.exposeBoolean('sampleData', { description: 'True where they are invented.' }),
  }),
})

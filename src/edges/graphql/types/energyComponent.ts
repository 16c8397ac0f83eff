import type {
  Band,
  Block,
  BlockPrice,
  EnergyComponent,
  FlatPrice,
  HoursOfDay,
  Season,
  TimeOfUsePrice,
} from '../../../core/money/tariff.ts'
import { builder } from '../builder.ts'
import { SHORT_LIST as ONCE } from '../limits.ts'
import { DayKindEnum, TariffPeriodEnum } from './tariffEnums.ts'

const from = 'First day, MM-DD.'
const to = 'Last day, MM-DD; before `from` where it goes over the turn of the year.'

const BlockType = builder.objectRef<Block>('Block').implement({
  description: 'One step of a block price.',
  fields: (t) => ({
    upToKwh: t.exposeFloat('upToKwh', {
      nullable: true,
      description: 'Where it ends, kWh in the period; null for the last.',
    }),
    pricePerKwh: t.exposeFloat('pricePerKwh', { description: 'Price of one kWh, in units of the currency.' }),
  }),
})

type BlockSeason = NonNullable<BlockPrice['seasons']>[number]
const BlockSeasonType = builder.objectRef<BlockSeason>('BlockSeason').implement({
  description: 'Other blocks for a part of the year.',
  fields: (t) => ({
    from: t.exposeString('from', { description: from }),
    to: t.exposeString('to', { description: to }),
    blocks: t.field({
      type: [BlockType],
      description: 'In order.',
      complexity: ONCE,
      resolve: ({ blocks }) => blocks,
    }),
  }),
})

const SeasonType = builder.objectRef<Season>('Season').implement({
  description: 'Days of every year, both ends in it.',
  fields: (t) => ({
    from: t.exposeString('from', { description: from }),
    to: t.exposeString('to', { description: to }),
  }),
})

const HoursOfDayType = builder.objectRef<HoursOfDay>('HoursOfDay').implement({
  description: 'A part of one day on the clock of the place.',
  fields: (t) => ({
    from: t.exposeString('from', { description: 'Beginning, HH:MM.' }),
    to: t.exposeString('to', { description: 'The first that is out, HH:MM, 24:00 at most.' }),
  }),
})

const BandType = builder.objectRef<Band>('Band').implement({
  description: 'One price of a time-of-use price, and when it holds. The first that fits holds.',
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Name for people.' }),
    pricePerKwh: t.exposeFloat('pricePerKwh', { description: 'Price of one kWh, in units of the currency.' }),
    seasons: t.field({
      type: [SeasonType],
      nullable: true,
      description: 'Parts of the year; null is all of it.',
      complexity: ONCE,
      resolve: ({ seasons }) => seasons,
    }),
    days: t.field({
      type: [DayKindEnum],
      nullable: true,
      description: 'Days; null is every day.',
      complexity: ONCE,
      resolve: ({ days }) => days,
    }),
    hours: t.field({
      type: [HoursOfDayType],
      nullable: true,
      description: 'Parts of the day; null is all of it.',
      complexity: ONCE,
      resolve: ({ hours }) => hours,
    }),
  }),
})

/** Fields of a flat price, wherever it stands. */
export const flatPrice = builder.interfaceRef<FlatPrice>('FlatPrice').implement({
  description: 'One price for every kWh.',
  fields: (t) => ({
    pricePerKwh: t.exposeFloat('pricePerKwh', { description: 'Price of one kWh, in units of the currency.' }),
  }),
})

export const blockPrice = builder.interfaceRef<BlockPrice>('BlockPrice').implement({
  description: 'The price of a kWh goes by how many came before it in the period.',
  fields: (t) => ({
    per: t.expose('per', { type: TariffPeriodEnum, description: 'When the blocks start anew.' }),
    blocks: t.field({
      type: [BlockType],
      description: 'In order.',
      complexity: ONCE,
      resolve: ({ blocks }) => blocks,
    }),
    seasons: t.field({
      type: [BlockSeasonType],
      nullable: true,
      description: 'Other blocks for parts of the year; null where there are none.',
      complexity: ONCE,
      resolve: ({ seasons }) => seasons,
    }),
  }),
})

export const timeOfUsePrice = builder.interfaceRef<TimeOfUsePrice>('TimeOfUsePrice').implement({
  description: 'The price of a kWh goes by when it is used.',
  fields: (t) => ({
    timeZone: t.exposeString('timeZone', { description: "IANA name of the place's clock." }),
    bands: t.field({
      type: [BandType],
      description: 'In order.',
      complexity: ONCE,
      resolve: ({ bands }) => bands,
    }),
    otherwisePricePerKwh: t.exposeFloat('otherwisePricePerKwh', { description: 'Price where no band fits.' }),
    holidays: t.stringList({
      nullable: true,
      complexity: ONCE,
      description: 'Dates that count as holidays, YYYY-MM-DD.',
      resolve: ({ holidays }) => holidays,
    }),
  }),
})

const TYPES: Readonly<Record<EnergyComponent['kind'], string>> = {
  flat: 'FlatComponent',
  block: 'BlockComponent',
  'time-of-use': 'TimeOfUseComponent',
}

export const EnergyComponentType = builder.interfaceRef<EnergyComponent>('EnergyComponent').implement({
  description: 'One of several prices that are added up for every kWh; ask for __typename.',
  resolveType: ({ kind }) => TYPES[kind],
  fields: (t) => ({ name: t.exposeString('name', { description: 'Name of its line on the bill.' }) }),
})

type Named<T> = T & { readonly name: string }
builder.objectRef<Named<FlatPrice>>(TYPES.flat).implement({
  description: 'One price for every kWh, as a part.',
  interfaces: [EnergyComponentType, flatPrice],
})
builder.objectRef<Named<BlockPrice>>(TYPES.block).implement({
  description: 'Blocks, as a part.',
  interfaces: [EnergyComponentType, blockPrice],
})
builder.objectRef<Named<TimeOfUsePrice>>(TYPES['time-of-use']).implement({
  description: 'A price by time, as a part.',
  interfaces: [EnergyComponentType, timeOfUsePrice],
})

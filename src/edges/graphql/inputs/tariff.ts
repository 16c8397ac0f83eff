import { builder } from '../builder.ts'
import { DayKindEnum, LineRoundingEnum, TariffPeriodEnum, WeekdayEnum } from '../types/tariffEnums.ts'

const price = 'Price of one kWh, in units of the currency.'
const first = 'First day, MM-DD.'
const last = 'Last day, MM-DD; before `from` where it goes over the turn of the year.'
const begin = 'Beginning, HH:MM in whole quarters of an hour.'
const end = 'The first that is out, HH:MM, 24:00 at most.'

const BlockInput = builder.inputType('BlockInput', {
  description: 'One step of a block price.',
  fields: (t) => ({
    upToKwh: t.float({ description: 'Where it ends, kWh in the period; only the last has no end.' }),
    pricePerKwh: t.float({ required: true, description: price }),
  }),
})

const BlockSeasonInput = builder.inputType('BlockSeasonInput', {
  description: 'Other blocks for a part of the year.',
  fields: (t) => ({
    from: t.string({ required: true, description: first }),
    to: t.string({ required: true, description: last }),
    blocks: t.field({ type: [BlockInput], required: true, description: 'In order, 1 to 20.' }),
  }),
})

const SeasonInput = builder.inputType('SeasonInput', {
  description: 'Days of every year, both ends in it.',
  fields: (t) => ({
    from: t.string({ required: true, description: first }),
    to: t.string({ required: true, description: last }),
  }),
})

const HoursOfDayInput = builder.inputType('HoursOfDayInput', {
  description: 'A part of one day on the clock of the place.',
  fields: (t) => ({
    from: t.string({ required: true, description: begin }),
    to: t.string({ required: true, description: end }),
  }),
})

export const HoursOfWeekInput = builder.inputType('HoursOfWeekInput', {
  description: 'A part of some days of the week.',
  fields: (t) => ({
    days: t.field({ type: [WeekdayEnum], description: 'The days; all by default.' }),
    from: t.string({ required: true, description: begin }),
    to: t.string({ required: true, description: end }),
  }),
})

const BandInput = builder.inputType('BandInput', {
  description: 'One price of a time-of-use price, and when it holds.',
  fields: (t) => ({
    name: t.string({ required: true, description: 'Name for people.' }),
    pricePerKwh: t.float({ required: true, description: price }),
    seasons: t.field({ type: [SeasonInput], description: 'Parts of the year; all of it by default.' }),
    days: t.field({ type: [DayKindEnum], description: 'Days; every day, holidays too, by default.' }),
    hours: t.field({ type: [HoursOfDayInput], description: 'Parts of the day; all of it by default.' }),
  }),
})

const FixedChargeInput = builder.inputType('FixedChargeInput', {
  description: 'What falls due whatever is used.',
  fields: (t) => ({
    name: t.string({ required: true, description: 'Name of its line on the bill.' }),
    amount: t.float({ required: true, description: 'In units of the currency.' }),
    per: t.field({ type: TariffPeriodEnum, required: true, description: 'How often.' }),
  }),
})

const TaxInput = builder.inputType('TaxInput', {
  description: 'A tax on lines of the bill; never on another tax.',
  fields: (t) => ({
    name: t.string({ required: true, description: 'Name of its line on the bill.' }),
    percent: t.float({ required: true, description: '% of the lines that it is on.' }),
    on: t.stringList({
      description: 'Names of those lines; all by default. The line of a single price is `energy`.',
    }),
  }),
})

const MinimumChargeInput = builder.inputType('MinimumChargeInput', {
  description: 'What the lines of energy come to at least.',
  fields: (t) => ({
    amount: t.float({ required: true, description: 'In units of the currency.' }),
    per: t.field({ type: TariffPeriodEnum, required: true, description: 'For each of these.' }),
  }),
})

/** The builder of an input's fields, as Pothos hands it out. */
type Fields = Parameters<Parameters<typeof builder.inputType>[1]['fields']>[0]

const flat = (t: Fields) => ({ pricePerKwh: t.float({ required: true, description: price }) })
const block = (t: Fields) => ({
  per: t.field({ type: TariffPeriodEnum, required: true, description: 'When the blocks start anew.' }),
  blocks: t.field({ type: [BlockInput], required: true, description: 'In order, 1 to 20.' }),
  seasons: t.field({ type: [BlockSeasonInput], description: 'Other blocks for parts of the year.' }),
})
const timeOfUse = (t: Fields) => ({
  timeZone: t.string({
    required: true,
    description: "IANA name of the place's clock, such as Europe/Berlin.",
  }),
  bands: t.field({
    type: [BandInput],
    required: true,
    description: 'The first that fits holds; a holiday is no weekday.',
  }),
  otherwisePricePerKwh: t.float({ required: true, description: 'Price where no band fits.' }),
  holidays: t.stringList({ description: 'Dates that count as holidays, YYYY-MM-DD.' }),
})
const name = (t: Fields) => ({
  name: t.string({ required: true, description: 'Name of its line on the bill.' }),
})
const terms = (t: Fields) => ({
  currency: t.string({ required: true, description: 'ISO 4217 code, such as EUR.' }),
  relativeUncertainty: t.float({
    description: "Half-width of the price's uncertainty relative to the price, 0 to 0.95; exact by default.",
  }),
  validFrom: t.string({ description: 'First day, YYYY-MM-DD; open by default.' }),
  validTo: t.string({ description: 'Last day, YYYY-MM-DD; open by default.' }),
  fixedCharges: t.field({ type: [FixedChargeInput], description: 'No part of what standby costs.' }),
  taxes: t.field({ type: [TaxInput], description: 'Taxes.' }),
  minimumCharge: t.field({
    type: MinimumChargeInput,
    description: 'What the lines of energy come to at least.',
  }),
  rounding: t.field({
    type: LineRoundingEnum,
    description: 'Of each line of a bill; none by default. The margin is not rounded.',
  }),
  referenceYear: t.int({ description: 'Year whose days and hours are counted; 2025 by default.' }),
})

const FlatTariffInput = builder.inputType('FlatTariffInput', {
  description: 'One price for every kWh.',
  fields: (t) => ({ ...flat(t), ...terms(t) }),
})
const BlockTariffInput = builder.inputType('BlockTariffInput', {
  description: 'Rising or falling blocks.',
  fields: (t) => ({ ...block(t), ...terms(t) }),
})
const TimeOfUseTariffInput = builder.inputType('TimeOfUseTariffInput', {
  description: 'A price by season, day and hour.',
  fields: (t) => ({ ...timeOfUse(t), ...terms(t) }),
})

const FlatComponentInput = builder.inputType('FlatComponentInput', {
  description: 'One price for every kWh, as a part.',
  fields: (t) => ({ ...name(t), ...flat(t) }),
})
const BlockComponentInput = builder.inputType('BlockComponentInput', {
  description: 'Blocks, as a part.',
  fields: (t) => ({ ...name(t), ...block(t) }),
})
const TimeOfUseComponentInput = builder.inputType('TimeOfUseComponentInput', {
  description: 'A price by time, as a part.',
  fields: (t) => ({ ...name(t), ...timeOfUse(t) }),
})
const EnergyComponentInput = builder.inputType('EnergyComponentInput', {
  description: 'One of several prices that are added up for every kWh: exactly one kind.',
  isOneOf: true,
  fields: (t) => ({
    flat: t.field({ type: FlatComponentInput, description: 'One price for every kWh.' }),
    block: t.field({ type: BlockComponentInput, description: 'Blocks.' }),
    timeOfUse: t.field({ type: TimeOfUseComponentInput, description: 'A price by time.' }),
  }),
})
const TwoPartTariffInput = builder.inputType('TwoPartTariffInput', {
  description: 'Several prices that are added up for every kWh.',
  fields: (t) => ({
    components: t.field({ type: [EnergyComponentInput], required: true, description: 'The parts, 2 to 10.' }),
    ...terms(t),
  }),
})

const kinds = (t: Fields) => ({
  flat: t.field({ type: FlatTariffInput, description: 'One price for every kWh.' }),
  block: t.field({ type: BlockTariffInput, description: 'Rising or falling blocks.' }),
  timeOfUse: t.field({ type: TimeOfUseTariffInput, description: 'A price by season, day and hour.' }),
  twoPart: t.field({ type: TwoPartTariffInput, description: 'Several prices that are added up.' }),
})

export const TariffInput = builder.inputType('TariffInput', {
  description:
    'Price structure of energy taken from the grid: exactly one kind. Feed-in prices and demand charges are out.',
  isOneOf: true,
  fields: (t) => kinds(t),
})

export const TariffChoiceInput = builder.inputType('TariffChoiceInput', {
  description: 'A tariff that the service knows, or one of the caller: exactly one of these.',
  isOneOf: true,
  fields: (t) => ({
    code: t.string({ description: 'Code of a tariff that the service knows.' }),
    ...kinds(t),
  }),
})

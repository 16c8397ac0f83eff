import type {
  BlockTariff,
  FlatTariff,
  Tariff,
  TariffTerms,
  TimeOfUseTariff,
  TwoPartTariff,
} from '../../../core/money/tariff.ts'
import { builder } from '../builder.ts'
import type { ShownReference } from '../shownReference.ts'
import { SHORT_LIST as ONCE } from '../limits.ts'
import { blockPrice, EnergyComponentType, flatPrice, timeOfUsePrice } from './energyComponent.ts'
import { LineRoundingEnum, TariffPeriodEnum } from './tariffEnums.ts'

const FixedChargeType = builder
  .objectRef<NonNullable<TariffTerms['fixedCharges']>[number]>('FixedCharge')
  .implement({
    description: 'What falls due whatever is used.',
    fields: (t) => ({
      name: t.exposeString('name', { description: 'Name of its line on the bill.' }),
      amount: t.exposeFloat('amount', { description: 'In units of the currency.' }),
      per: t.expose('per', { type: TariffPeriodEnum, description: 'How often.' }),
    }),
  })

const TaxType = builder.objectRef<NonNullable<TariffTerms['taxes']>[number]>('Tax').implement({
  description: 'A tax on lines of the bill; never on another tax.',
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Name of its line on the bill.' }),
    percent: t.exposeFloat('percent', { description: '% of the lines that it is on.' }),
    on: t.stringList({
      nullable: true,
      complexity: ONCE,
      description: 'Names of those lines; null is all of them.',
      resolve: ({ on }) => on,
    }),
  }),
})

const MinimumChargeType = builder
  .objectRef<NonNullable<TariffTerms['minimumCharge']>>('MinimumCharge')
  .implement({
    description: 'What the lines of energy come to at least.',
    fields: (t) => ({
      amount: t.exposeFloat('amount', { description: 'In units of the currency.' }),
      per: t.expose('per', { type: TariffPeriodEnum, description: 'For each of these.' }),
    }),
  })

const TYPES: Readonly<Record<Tariff['kind'], string>> = {
  flat: 'FlatTariff',
  block: 'BlockTariff',
  'time-of-use': 'TimeOfUseTariff',
  'two-part': 'TwoPartTariff',
}

export const TariffType = builder.interfaceRef<Tariff>('Tariff').implement({
  description:
    'Price structure of energy taken from the grid. Further kinds of tariff may join; ask for __typename.',
  resolveType: ({ kind }) => TYPES[kind],
  fields: (t) => ({
    currency: t.exposeString('currency', { description: 'ISO 4217 code.' }),
    relativeUncertainty: t.exposeFloat('relativeUncertainty', {
      nullable: true,
      description: "Half-width of the price's uncertainty relative to the price, 0 to 1; null is exact.",
    }),
    validFrom: t.exposeString('validFrom', {
      nullable: true,
      description: 'First day, YYYY-MM-DD; null is open.',
    }),
    validTo: t.exposeString('validTo', {
      nullable: true,
      description: 'Last day, YYYY-MM-DD; null is open.',
    }),
    fixedCharges: t.field({
      type: [FixedChargeType],
      nullable: true,
      description: 'What falls due whatever is used; no part of what standby costs.',
      complexity: ONCE,
      resolve: ({ fixedCharges }) => fixedCharges,
    }),
    taxes: t.field({
      type: [TaxType],
      nullable: true,
      description: 'Taxes.',
      complexity: ONCE,
      resolve: ({ taxes }) => taxes,
    }),
    minimumCharge: t.field({
      type: MinimumChargeType,
      nullable: true,
      description: 'What the lines of energy come to at least.',
      resolve: ({ minimumCharge }) => minimumCharge,
    }),
    rounding: t.field({
      type: LineRoundingEnum,
      nullable: true,
      description: 'How each line of a bill is rounded; null is not at all.',
      resolve: ({ rounding }) => rounding,
    }),
    referenceYear: t.exposeInt('referenceYear', {
      nullable: true,
      description: 'Year whose days and hours are counted; null is 2025.',
    }),
  }),
})

builder.objectRef<FlatTariff>(TYPES.flat).implement({
  description: 'One price for every kWh.',
  interfaces: [TariffType, flatPrice],
})
builder.objectRef<BlockTariff>(TYPES.block).implement({
  description: 'Rising or falling blocks.',
  interfaces: [TariffType, blockPrice],
})
builder.objectRef<TimeOfUseTariff>(TYPES['time-of-use']).implement({
  description: 'A price by season, day and hour.',
  interfaces: [TariffType, timeOfUsePrice],
})
builder.objectRef<TwoPartTariff>(TYPES['two-part']).implement({
  description: 'Several prices that are added up for every kWh.',
  interfaces: [TariffType],
  fields: (t) => ({
    components: t.field({
      type: [EnergyComponentType],
      description: 'The parts.',
      complexity: ONCE,
      resolve: ({ components }) => components,
    }),
  }),
})

export const NamedTariffType = builder.objectRef<ShownReference<'tariff'>>('NamedTariff').implement({
  description: 'A tariff that the operator keeps under a code.',
  fields: (t) => ({
    code: t.exposeString('code', { description: 'For `tariffCode`.' }),
    name: t.exposeString('name', { description: 'Name in plain words.' }),
    tariff: t.expose('tariff', { type: TariffType, description: 'The price structure.' }),
    source: t.exposeString('source', { description: 'Where the price is from.' }),
    sampleData: t.exposeBoolean('sampleData', { description: 'True where it is invented.' }),
    retired: t.exposeBoolean('retired', {
      description: 'True where it is out of lists, kept for old estimates.',
    }),
    changedInRevision: t.exposeInt('changedInRevision', {
      description:
        'Revision that gave it this state, whatever was edited elsewhere since; `basedOn` of an edit.',
    }),
  }),
})

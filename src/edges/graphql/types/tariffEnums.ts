import type { FactorKind, GasesCounted, SourceMark } from '../../../core/emissions/emissionFactor.ts'
import type { DayKind, TariffPeriod, TariffTerms, Weekday } from '../../../core/money/tariff.ts'
import { enumOf } from '../enumOf.ts'

export const TariffPeriodEnum = enumOf<TariffPeriod>(
  'TariffPeriod',
  'How often something starts anew or falls due.',
  {
    day: 'Each day.',
    month: 'Each calendar month.',
    year: 'Each year.',
  },
)

const WEEKDAYS: Readonly<Record<Weekday, string>> = {
  monday: 'Monday.',
  tuesday: 'Tuesday.',
  wednesday: 'Wednesday.',
  thursday: 'Thursday.',
  friday: 'Friday.',
  saturday: 'Saturday.',
  sunday: 'Sunday.',
}
export const WeekdayEnum = enumOf<Weekday>('Weekday', 'A day of the week.', WEEKDAYS)
export const DayKindEnum = enumOf<DayKind>('DayKind', 'A day of the week, or a holiday, which is none.', {
  ...WEEKDAYS,
  holiday: 'A date that the tariff names as a holiday.',
})

export const LineRoundingEnum = enumOf<NonNullable<TariffTerms['rounding']>>(
  'LineRounding',
  'How each line of a bill is rounded to the minor unit of the currency.',
  { none: 'Not at all.', 'half-up': 'Halves away from zero.', 'half-even': 'Halves to the even neighbour.' },
)

export const FactorKindEnum = enumOf<FactorKind>('EmissionFactorKind', 'What an emission factor is for.', {
  average: 'All generation over the kWh generated: for what a household uses.',
  marginal: 'Of the stations that would generate less: for what a household saves.',
})

const GASES: Readonly<Record<GasesCounted, string>> = {
  CO2: 'CO2 alone.',
  'CO2+CH4+N2O': 'The three gases by their warming potential.',
  CO2e: 'Greenhouse gases that the source does not list.',
  'CO2e life-cycle': 'With what building and fuelling the power stations emits.',
}
/** In words, since these are no names that GraphQL could spell. */
export const GASES_IN_WORDS = Object.entries(GASES)
  .map(([gases, meaning]) => `${gases}: ${meaning}`)
  .join(' ')

export const SourceMarkEnum = enumOf<SourceMark>('SourceMark', 'How well a published figure is confirmed.', {
  V: 'Read in the source itself.',
  V2: 'Read in a public transcript of it.',
  C: 'Computed from confirmed figures.',
  M: 'From memory.',
})

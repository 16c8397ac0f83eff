import type { BlockTariff, TimeOfUseTariff, TwoPartTariff } from '../../../src/core/money/tariff.ts'

/** Invented tariffs for the tests. */
export const RISING = {
  kind: 'block',
  currency: 'USD',
  per: 'month',
  blocks: [{ upToKwh: 200, pricePerKwh: 0.1 }, { upToKwh: 500, pricePerKwh: 0.15 }, { pricePerKwh: 0.25 }],
} as const satisfies BlockTariff

export const FALLING = {
  kind: 'block',
  currency: 'EUR',
  per: 'month',
  blocks: [{ upToKwh: 100, pricePerKwh: 0.3 }, { pricePerKwh: 0.2 }],
} as const satisfies BlockTariff

/** Nights, weekends and holidays are cheap. */
export const DAY_AND_NIGHT = {
  kind: 'time-of-use',
  currency: 'EUR',
  timeZone: 'Europe/Berlin',
  bands: [
    {
      name: 'night',
      pricePerKwh: 0.2,
      hours: [
        { from: '00:00', to: '06:00' },
        { from: '22:00', to: '24:00' },
      ],
    },
    { name: 'free days', pricePerKwh: 0.2, days: ['saturday', 'sunday', 'holiday'] },
  ],
  otherwisePricePerKwh: 0.4,
  holidays: ['2025-12-25'],
} as const satisfies TimeOfUseTariff

export const TWO_PART = {
  kind: 'two-part',
  currency: 'EUR',
  components: [
    { name: 'energy', kind: 'block', per: 'month', blocks: RISING.blocks },
    { name: 'power cost', kind: 'flat', pricePerKwh: 0.05 },
    {
      name: 'network',
      kind: 'time-of-use',
      timeZone: 'Europe/Berlin',
      bands: DAY_AND_NIGHT.bands,
      otherwisePricePerKwh: 0.1,
    },
  ],
  fixedCharges: [{ name: 'meter', amount: 12, per: 'year' }],
  taxes: [{ name: 'value added tax', percent: 20, on: ['energy', 'power cost', 'network'] }],
} as const satisfies TwoPartTariff

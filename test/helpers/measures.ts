import type { Measure } from '../../src/core/savings/measure.ts'

const always = { low: 1, typical: 1, high: 1 }
const none = { low: 0, typical: 0, high: 0 }

const aMeasure = (fields: Partial<Measure> & Pick<Measure, 'code' | 'kind'>): Measure => ({
  name: fields.code,
  price: 0,
  currency: null,
  lifeYears: 5,
  persistence: always,
  ownDrawW: none,
  ratedLoadW: null,
  ratedLoadA: null,
  outlets: null,
  hoursOffPerWeek: null,
  fromMode: null,
  toMode: null,
  newDrawW: null,
  categories: [],
  source: 'invented for the tests',
  sampleData: false,
  ...fields,
})

/** Measures of their own, one of each kind, so that no test rests on the operator's file. */
export const measures: ReadonlyMap<string, Measure> = new Map(
  [
    aMeasure({ code: 'habit', kind: 'outlet-switch', persistence: { low: 0.2, typical: 0.5, high: 0.8 } }),
    aMeasure({
      code: 'strip',
      kind: 'switchable-strip',
      price: 10,
      currency: 'EUR',
      ownDrawW: { low: 0.1, typical: 0.1, high: 0.1 },
      ratedLoadW: 1000,
      ratedLoadA: 10,
      outlets: 4,
    }),
    aMeasure({
      code: 'timer',
      kind: 'timer',
      price: 8,
      currency: 'EUR',
      ownDrawW: { low: 0.5, typical: 0.5, high: 0.5 },
      hoursOffPerWeek: 56,
    }),
    aMeasure({ code: 'setting', kind: 'setting', fromMode: 'networked-standby', toMode: 'standby' }),
    aMeasure({
      code: 'new',
      kind: 'replacement',
      price: 50,
      currency: 'EUR',
      newDrawW: { low: 0.2, typical: 0.2, high: 0.2 },
    }),
  ].map((one) => [one.code, one]),
)

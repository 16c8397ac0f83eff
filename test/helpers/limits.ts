import type { Limit } from '../../src/core/limits/limit.ts'

export const aLimit = (fields: Partial<Limit> & Pick<Limit, 'code'>): Limit => ({
  jurisdiction: 'EU',
  purpose: 'placing-on-the-market',
  regulation: 'A regulation for the tests',
  annex: 'I',
  point: '1',
  appliesFrom: '2020-01-01',
  appliesUntil: null,
  mode: 'standby',
  condition: 'reactivation-only',
  supplyType: null,
  outputAboveW: null,
  outputUpToW: null,
  limitW: 0.5,
  toleranceW: 0.1,
  tolerancePercent: null,
  toleranceSource: 'invented for the tests',
  toleranceMark: 'M',
  source: 'invented for the tests',
  mark: 'M',
  ...fields,
})

/** Limits of their own, so that no test rests on the operator's file. */
export const limits: ReadonlyMap<string, Limit> = new Map(
  [
    aLimit({ code: 'old-standby', appliesFrom: '2010-01-01', appliesUntil: '2019-12-31', limitW: 1 }),
    aLimit({ code: 'standby' }),
    aLimit({ code: 'standby-display', condition: 'information-or-status-display', limitW: 1 }),
    aLimit({
      code: 'buy-standby',
      purpose: 'purchasing',
      jurisdiction: 'US',
      condition: 'any',
      toleranceW: null,
      toleranceSource: null,
      toleranceMark: null,
    }),
  ].map((one) => [one.code, one]),
)

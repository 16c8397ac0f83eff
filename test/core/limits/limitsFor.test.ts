import { describe, expect, test } from 'vitest'
import type { LimitQuestion } from '../../../src/core/limits/limitCheck.ts'
import { limitsFor } from '../../../src/core/limits/limitsFor.ts'
import { aLimit, limits } from '../../helpers/limits.ts'

const found = (question: LimitQuestion, among = limits) => limitsFor(among, question).map(({ code }) => code)
const standby = { jurisdiction: 'EU', mode: 'standby', showsStatus: false } as const

describe('the limits that a device may fall under', () => {
  test('go by the day on which it was placed on the market, first and last day included', () => {
    expect(found({ ...standby, placedOnMarket: '2009-12-31' })).toEqual([])
    expect(found({ ...standby, placedOnMarket: '2010-01-01' })).toEqual(['old-standby'])
    expect(found({ ...standby, placedOnMarket: '2019-12-31' })).toEqual(['old-standby'])
    expect(found({ ...standby, placedOnMarket: '2020-01-01' })).toEqual(['standby'])
  })

  test('are those of all times where it is not known when that was', () => {
    expect(found(standby)).toEqual(['old-standby', 'standby'])
  })

  test('are all of a year or month in which they changed', () => {
    const changing = new Map(
      [
        aLimit({ code: 'a', appliesFrom: '2013-01-07', appliesUntil: '2025-05-08' }),
        aLimit({ code: 'b', appliesFrom: '2025-05-09' }),
      ].map((one) => [one.code, one]),
    )
    expect(found({ ...standby, placedOnMarket: '2025' }, changing)).toEqual(['a', 'b'])
    expect(found({ ...standby, placedOnMarket: '2025-05' }, changing)).toEqual(['a', 'b'])
    expect(found({ ...standby, placedOnMarket: '2025-06' }, changing)).toEqual(['b'])
    expect(found({ ...standby, placedOnMarket: '2024' }, changing)).toEqual(['a'])
  })

  test('are both where it is not known whether it shows its status', () => {
    const asked = { jurisdiction: 'EU', mode: 'standby', placedOnMarket: '2022' } as const
    expect(found(asked)).toEqual(['standby', 'standby-display'])
    expect(found({ ...asked, showsStatus: true })).toEqual(['standby-display'])
    expect(found({ ...asked, showsStatus: false })).toEqual(['standby'])
  })

  test('go by network availability, supply type and rated output in the same way', () => {
    const networked = new Map(
      [
        aLimit({ code: 'high', mode: 'networked-standby', condition: 'high-network-availability' }),
        aLimit({ code: 'other', mode: 'networked-standby', condition: 'other-networked' }),
        aLimit({
          code: 'small',
          mode: 'no-load',
          condition: 'any',
          supplyType: 'ac-dc',
          outputAboveW: 0,
          outputUpToW: 49,
        }),
        aLimit({
          code: 'large',
          mode: 'no-load',
          condition: 'any',
          supplyType: 'ac-dc',
          outputAboveW: 49,
          outputUpToW: null,
        }),
        aLimit({ code: 'ac-ac', mode: 'no-load', condition: 'any', supplyType: 'ac-ac' }),
      ].map((one) => [one.code, one]),
    )
    const asked = { jurisdiction: 'EU', mode: 'networked-standby', placedOnMarket: '2022' } as const
    expect(found(asked, networked)).toEqual(['high', 'other'])
    expect(found({ ...asked, highNetworkAvailability: true }, networked)).toEqual(['high'])
    expect(found({ ...asked, highNetworkAvailability: false }, networked)).toEqual(['other'])
    const empty = { ...asked, mode: 'no-load' } as const
    expect(found(empty, networked)).toEqual(['ac-ac', 'large', 'small'])
    expect(found({ ...empty, supplyType: 'ac-dc', ratedOutputW: 49 }, networked)).toEqual(['small'])
    expect(found({ ...empty, supplyType: 'ac-dc', ratedOutputW: 49.1 }, networked)).toEqual(['large'])
  })

  test('are those on selling alone, unless one is named', () => {
    expect(found({ jurisdiction: 'US', mode: 'standby', placedOnMarket: '2022' })).toEqual([])
    expect(found({ limitCode: 'buy-standby' })).toEqual(['buy-standby'])
    expect(found({ limitCode: 'nowhere' })).toEqual([])
  })
})

import { expect, test } from 'vitest'
import { checkPlanOptions } from '../../../src/core/savings/checkPlanOptions.ts'
import { testSettings } from '../../helpers/testSettings.ts'

const devices = [{ id: 'tv', category: 'television', outlet: 'wall' }, { category: 'router' }]
const faultsOf = (plan: object, of: readonly object[] = devices) =>
  checkPlanOptions({ devices: of, plan }, testSettings).map(({ pointer, code }) => `${pointer} ${code}`)

test('a plan of known names has no fault', () => {
  const measures = [
    { code: 'strip', ratedLoadW: 100, outlets: 3 },
    { code: 'timer', devices: ['tv'], hoursOffPerWeek: 3 },
    { code: 'timer', devices: ['device-2'] },
  ]
  const rated = [{ deviceId: 'device-2', ratedWatts: 10 }]
  expect(faultsOf({ measures, devices: rated, outletsWithStrip: [' wall '] })).toEqual([])
  expect(checkPlanOptions({ devices }, testSettings)).toEqual([])
})

test('unknown measures, devices, outlets and factors are named, all at once', () => {
  expect(
    faultsOf({
      measures: [{ code: 'magic' }, { code: 'habit', devices: ['tv', 'device-1'] }],
      devices: [{ deviceId: 'radio', ratedWatts: 5 }],
      outletsWithStrip: ['wall', 'hall'],
      marginalFactorCode: 'nowhere',
    }),
  ).toEqual([
    '/plan/measures/0/code unknown-code',
    '/plan/measures/1/devices/1 unknown-device',
    '/plan/devices/0/deviceId unknown-device',
    '/plan/outletsWithStrip/1 unknown-outlet',
    '/plan/marginalFactorCode unknown-code',
  ])
})

test('a figure that the kind of measure does not have is refused', () => {
  expect(
    faultsOf({
      measures: [
        { code: 'habit', hoursOffPerWeek: 5 },
        { code: 'timer', ratedLoadW: 5, newDrawW: 1 },
        { code: 'setting', toMode: 'networked-standby' },
      ],
    }),
  ).toEqual([
    '/plan/measures/0/hoursOffPerWeek not-of-this-kind',
    '/plan/measures/1/ratedLoadW not-of-this-kind',
    '/plan/measures/1/newDrawW not-of-this-kind',
    '/plan/measures/2/toMode same-mode',
  ])
})

test('nothing is given twice', () => {
  expect(
    faultsOf({
      measures: [{ code: 'habit' }, { code: 'habit', devices: ['tv'] }, { code: 'timer' }],
      devices: [
        { deviceId: 'tv', ratedWatts: 5 },
        { deviceId: 'tv', ratedWatts: 6 },
      ],
      marginalFactor: { kgCo2ePerKwh: 0.5 },
      marginalFactorCode: 'any',
    }),
  ).toEqual([
    '/plan/measures/1 measure-twice',
    '/plan/devices/1/deviceId duplicate-id',
    '/plan/marginalFactorCode given-twice',
  ])
})

test('a plan is made for a household, not for a building', () => {
  const many = (count: number) => Array.from({ length: count }, () => ({ category: 'router' }))
  expect(faultsOf({}, many(100))).toEqual([])
  expect(faultsOf({}, many(101))).toEqual(['/devices too-many-devices'])
})

test('what can’t be read has no fault of the trade: its shape says so already', () => {
  for (const raw of [null, 'plan', [], {}, { plan: 'all' }])
    expect(checkPlanOptions(raw, testSettings)).toEqual([])
  expect(
    faultsOf({ measures: [{ price: 3 }], devices: [{ ratedWatts: 5 }], outletsWithStrip: 'wall' }),
  ).toEqual([])
})

test('a setting moves hours between two modes, whichever of them is the household’s own word', () => {
  const settingOf = (modes: object) => faultsOf({ measures: [{ code: 'setting', ...modes }] })
  expect(settingOf({ fromMode: 'idle' })).toEqual([])
  expect(settingOf({ fromMode: 'idle', toMode: 'off' })).toEqual([])
  expect(settingOf({ fromMode: 'standby' })).toEqual(['/plan/measures/0/fromMode same-mode'])
  expect(settingOf({ fromMode: 'off', toMode: 'off' })).toEqual(['/plan/measures/0/toMode same-mode'])
})

test('where no device names an outlet, the answer says that there is none', () => {
  const [fault] = checkPlanOptions(
    { devices: [{ category: 'router' }], plan: { outletsWithStrip: ['wall'] } },
    testSettings,
  )
  expect(fault!.message).toBe('No device is plugged in at "wall". Outlets that devices name: none.')
})

test('a marginal factor goes by the code of one that is marginal', () => {
  const grid = testSettings.emissionFactors.get('grid')!
  const emissionFactors = new Map([
    ['grid', grid],
    ['edge', { ...grid, code: 'edge', kind: 'marginal' as const }],
  ])
  const check = (marginalFactorCode: string) =>
    checkPlanOptions({ plan: { marginalFactorCode } }, { ...testSettings, emissionFactors })
  expect(check('edge')).toEqual([])
  expect(check('grid')[0]!.message).toContain('Known are: edge.')
})

import { describe, expect, test } from 'vitest'
import { householdSchema } from '../../src/schemas/household.ts'
import { readShape } from '../../src/schemas/readShape.ts'

const faultsOf = (body: unknown) =>
  readShape(householdSchema, body).faults.map(
    ({ pointer, code, message }) => `${pointer} ${code}: ${message}`,
  )
const withMode = (mode: unknown) => ({ devices: [{ category: 'a', modes: [mode] }] })
const hours = '/devices/0/modes/0/hoursPerWeek'

describe('a fault says where, what is allowed and what was given', () => {
  test.each<[string, unknown, string[]]>([
    ['a wrong type', { devices: 'x' }, ['/devices invalid-type: must be a list, but it is "x".']],
    ['no object at all', null, [' invalid-type: must be an object, but it is null.']],
    ['an empty list', { devices: [] }, ['/devices too-small: must not be empty.']],
    ['a missing field', { devices: [{}] }, ['/devices/0/category required: This field is required.']],
    [
      'an unknown field, whose name may need escaping',
      { devices: [{ category: 'a', 'a/b~c': 1 }] },
      ['/devices/0/a~1b~0c unknown-field: There is no field "a/b~c" here; remove it or correct its name.'],
    ],
    [
      'a choice that does not exist',
      withMode({ mode: 'sleep' }),
      [
        '/devices/0/modes/0/mode invalid-value: must be one of: off, standby, networked-standby, idle, no-load, but it is "sleep".',
      ],
    ],
    [
      'neither of two forms',
      withMode({ mode: 'off', hoursPerWeek: 'x' }),
      [`${hours} invalid-union: must be a number or an object, but it is "x".`],
    ],
    [
      'a number below its bound',
      withMode({ mode: 'off', hoursPerWeek: -1 }),
      [`${hours} too-small: must be at least 0, but it is -1.`],
    ],
    [
      'a number above its bound',
      withMode({ mode: 'off', hoursPerWeek: 169 }),
      [`${hours} too-big: must be at most 168, but it is 169.`],
    ],
    [
      'a range in the wrong order, at both of its ends',
      withMode({ mode: 'off', hoursPerWeek: { low: 3, typical: 2, high: 1 } }),
      [
        `${hours}/low range-out-of-order: low (3) must not be above typical (2).`,
        `${hours}/high range-out-of-order: high (1) must not be below typical (2).`,
      ],
    ],
    [
      'a kind that does not exist',
      { devices: [{ category: 'a' }], tariff: { kind: 'free' } },
      ['/tariff/kind invalid-union: must be one of: flat, block, time-of-use, two-part, but it is "free".'],
    ],
    [
      'a number beside the few that are allowed',
      { devices: [{ category: 'a' }], supply: { volts: 230, tolerancePercent: 6, hertz: 55 } },
      ['/supply/hertz invalid-value: must be one of: 50, 60, but it is 55.'],
    ],
    [
      'control characters',
      { devices: [{ category: 'a\u0000b' }] },
      ['/devices/0/category invalid-format: must hold no control characters, but it is "a\\u0000b".'],
    ],
    [
      'text that is too long, shortened',
      { devices: [{ category: 'x'.repeat(200) }] },
      [`/devices/0/category too-big: must have at most 120 characters, but it is "${'x'.repeat(79)}….`],
    ],
  ])('%s', (_name, body, faults) => {
    expect(faultsOf(body)).toEqual(faults)
  })

  test('all faults of a body come at once', () => {
    const body = {
      devices: [{ category: '' }, { category: 'a', quantity: 0, colour: 'red' }],
      annualUseKwh: -1,
    }
    expect(faultsOf(body).map((fault) => fault.split(':')[0])).toEqual([
      '/annualUseKwh too-small',
      '/devices/0/category too-small',
      '/devices/1/quantity too-small',
      '/devices/1/colour unknown-field',
    ])
  })
})

test('a sound body has no fault and comes back with texts trimmed', () => {
  const { value, faults } = readShape(householdSchema, { devices: [{ category: ' tv ' }] })
  expect(faults).toEqual([])
  expect(value).toEqual({ devices: [{ category: 'tv' }] })
})

import { describe, expect, test } from 'vitest'
import { personalDataFaults } from '../../../src/core/inventory/personalData.ts'

const found = (raw: unknown) => personalDataFaults(raw).map(({ pointer }) => pointer)

describe('a field that would hold who lives there or where', () => {
  test.each([
    'name',
    'first_name',
    'surname',
    'Street',
    'post-code',
    'ZIP',
    'e-mail',
    'phone',
    'latitude',
    'birthDate',
  ])('%s is refused, whatever it holds', (name) => {
    expect(found({ [name]: 1 })).toEqual([`/${name}`])
  })

  test('is found at any depth, and named by its pointer', () => {
    expect(found({ visits: [{ devices: [{ ownerName: 'x', 'a/b~c': { city: 'x' } }] }] })).toEqual([
      '/visits/0/devices/0/ownerName',
      '/visits/0/devices/0/a~1b~0c/city',
    ])
  })

  test('is no word of the trade', () => {
    const words = { reference: 'H-1', label: 'hall', category: 'router', outlet: 'kitchen', notes: '' }
    expect(found({ ...words, visits: [{ date: '2025-03-01', devices: [] }] })).toEqual([])
  })

  test('is not looked for in a tariff, whose lines have names', () => {
    expect(found({ tariff: { components: [{ name: 'energy' }] } })).toEqual([])
    expect(found({ visits: [{ tariff: { name: 'energy' } }] })).toEqual(['/visits/0/tariff/name'])
  })
})

describe('a text', () => {
  test.each([
    ['write to someone@example.org', 'an e-mail address'],
    ['call +49 30 1234567 first', 'a telephone number'],
    ['12 Long Meadow Lane', 'a street address'],
    ['Beispielstraße 7', 'a street address'],
    ['key at Herr Muster', "a person's name"],
  ])('like "%s" seems to hold %s', (text, what) => {
    const [fault] = personalDataFaults({ notes: text })
    expect(fault).toMatchObject({ pointer: '/notes', code: 'personal-data' })
    expect(fault!.message).toContain(`seems to hold ${what}.`)
  })

  test.each(['behind the sofa, 230 V, 0.12 A', 'read on 2025-03-01 at 07:30', 'meter 12345', ''])(
    'like "%s" holds nobody',
    (notes) => {
      expect(found({ notes })).toEqual([])
    },
  )
})

test('what is no text and no object holds nobody, and a nest deeper than any shape allows is not gone through', () => {
  expect(found([null, 1, true])).toEqual([])
  const nested = (depth: number): unknown => (depth === 0 ? { city: 'x' } : { a: nested(depth - 1) })
  expect(found(nested(10))).toHaveLength(1)
  expect(found(nested(11))).toEqual([])
})

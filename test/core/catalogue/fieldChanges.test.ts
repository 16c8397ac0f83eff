import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { categoryChange, countChanges } from '../../../src/core/catalogue/categoryChange.ts'
import { fieldChanges } from '../../../src/core/catalogue/fieldChanges.ts'
import { categoryWith, drawWith, modeWith } from './sampleCategory.ts'

const fieldsOf = (before: ReturnType<typeof categoryWith>, after: ReturnType<typeof categoryWith>) =>
  categoryChange(before, after)?.fields

describe('the fields in which two JSON values differ', () => {
  test('are none where they are equal, whatever they are', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), (value) => {
        expect(fieldChanges(value, structuredClone(value))).toEqual([])
      }),
    )
  })

  test('are named by JSON Pointer, whatever the name of a member', () => {
    expect(fieldChanges({ 'a/b': { '~': 1 } }, { 'a/b': { '~': 2 } })).toEqual([
      { pointer: '/a~1b/~0', before: 1, after: 2 },
    ])
  })

  test('lack the side that has no such member, which is another thing than null', () => {
    expect(fieldChanges({ a: null, b: 1 }, { b: null, c: null })).toEqual([
      { pointer: '/a', before: null },
      { pointer: '/b', before: 1, after: null },
      { pointer: '/c', after: null },
    ])
  })
})

describe('what happened to a category', () => {
  test('is nothing where no field differs', () => {
    expect(categoryChange(categoryWith(), structuredClone(categoryWith()))).toBeNull()
  })

  test('is that it was added where there was none, without a list of all its fields', () => {
    const after = categoryWith()
    const added = { code: after.code, kind: 'added', before: null, after, fields: [] }
    expect(categoryChange(null, after)).toEqual(added)
  })

  test.each([
    [false, true, 'retired'],
    [true, false, 'restored'],
    [true, true, 'changed'],
    [false, false, 'changed'],
  ])('from retired %s to %s is %s, also where other fields change with it', (before, after, kind) => {
    const change = categoryChange(
      categoryWith({ retired: before }),
      categoryWith({ retired: after, name: 'Wax lamp' }),
    )
    expect(change?.kind).toBe(kind)
    expect(change?.fields.map(({ pointer }) => pointer)).toEqual(
      before === after ? ['/name'] : ['/name', '/retired'],
    )
  })

  test('is told figure by figure where the modes and the years are the same', () => {
    const draws = [drawWith({ yearTo: 2009 }), drawWith({ yearFrom: 2010 })]
    const after = [draws[0]!, { ...draws[1]!, highW: 5 }]
    expect(
      fieldsOf(
        categoryWith({ modes: [modeWith({ draws })] }),
        categoryWith({ modes: [modeWith({ draws: after })] }),
      ),
    ).toEqual([{ pointer: '/modes/0/draws/1/highW', before: 4, after: 5 }])
  })

  test.each([
    ['an alias', { aliases: ['bubble light'] }, { aliases: ['wax lamp', 'bubble light'] }, '/aliases'],
    [
      'a mode',
      { modes: [modeWith()] },
      { modes: [modeWith({ mode: 'off', defaultHoursPerWeek: 1 }), modeWith()] },
      '/modes',
    ],
    [
      'years',
      { modes: [modeWith({ draws: [drawWith()] })] },
      { modes: [modeWith({ draws: [drawWith({ yearTo: 2009 }), drawWith({ yearFrom: 2010 })] })] },
      '/modes/0/draws',
    ],
  ])('tells a list that gets %s as a whole, since an index would mislead', (_, before, after, pointer) => {
    const fields = fieldsOf(categoryWith(before), categoryWith(after))
    expect(fields?.map((field) => field.pointer)).toEqual([pointer])
  })

  test('is counted by kind', () => {
    const [before, after] = [categoryWith(), categoryWith({ name: 'Wax lamp' })]
    const changes = [
      categoryChange(null, after)!,
      categoryChange(before, after)!,
      categoryChange(null, after)!,
    ]
    expect(countChanges(changes)).toEqual({ added: 2, changed: 1, retired: 0, restored: 0 })
  })
})

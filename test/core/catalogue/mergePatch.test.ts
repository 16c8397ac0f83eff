import { describe, expect, test } from 'vitest'
import { mergePatch } from '../../../src/core/catalogue/mergePatch.ts'

/** RFC 7396, appendix A: original, patch, result. */
const PUBLISHED: readonly (readonly [unknown, unknown, unknown])[] = [
  [{ a: 'b' }, { a: 'c' }, { a: 'c' }],
  [{ a: 'b' }, { b: 'c' }, { a: 'b', b: 'c' }],
  [{ a: 'b' }, { a: null }, {}],
  [{ a: 'b', b: 'c' }, { a: null }, { b: 'c' }],
  [{ a: ['b'] }, { a: 'c' }, { a: 'c' }],
  [{ a: 'c' }, { a: ['b'] }, { a: ['b'] }],
  [{ a: { b: 'c' } }, { a: { b: 'd', c: null } }, { a: { b: 'd' } }],
  [{ a: [{ b: 'c' }] }, { a: [1] }, { a: [1] }],
  [
    ['a', 'b'],
    ['c', 'd'],
    ['c', 'd'],
  ],
  [{ a: 'b' }, ['c'], ['c']],
  [{ a: 'foo' }, null, null],
  [{ a: 'foo' }, 'bar', 'bar'],
  [{ e: null }, { a: 1 }, { e: null, a: 1 }],
  [[1, 2], { a: 'b', c: null }, { a: 'b' }],
  [{}, { a: { bb: { ccc: null } } }, { a: { bb: {} } }],
]

describe('a merge patch', () => {
  test.each(PUBLISHED)('makes of %j, patched with %j, %j (RFC 7396, appendix A)', (target, patch, result) => {
    expect(mergePatch(target, patch)).toEqual(result)
  })

  test('changes neither the original nor the patch', () => {
    const [target, patch] = [
      { a: { b: 1 }, c: [1] },
      { a: { b: 2 }, c: null },
    ]
    const copies = structuredClone([target, patch])
    mergePatch(target, patch)
    expect([target, patch]).toEqual(copies)
  })

  test.each(['{"__proto__":{"polluted":true}}', '{"a":{"__proto__":{"polluted":true}}}'])(
    'of %s pollutes nothing: __proto__ is a member like any other',
    (text) => {
      const merged = mergePatch({ a: {} }, JSON.parse(text))
      expect(({} as Record<string, unknown>)['polluted']).toBeUndefined()
      expect((merged as Record<string, unknown>)['polluted']).toBeUndefined()
      expect(JSON.stringify(merged)).toContain('__proto__')
    },
  )
})

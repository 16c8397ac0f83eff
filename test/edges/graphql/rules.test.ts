import { buildSchema, parse, validate, type ValidationRule } from 'graphql'
import { describe, expect, test } from 'vitest'
import { limitAliases } from '../../../src/edges/graphql/rules/limitAliases.ts'
import { limitDepth } from '../../../src/edges/graphql/rules/limitDepth.ts'
import { limitDirectives } from '../../../src/edges/graphql/rules/limitDirectives.ts'

/** A schema that can be nested for ever; the service's own cannot. */
const schema = buildSchema('type Query { inner: Query, list: [Query], leaf: Int }')
const reasons = (query: string, rule: ValidationRule) =>
  validate(schema, parse(query), [rule]).map(({ extensions }) => extensions['reason'])
const nested = (levels: number) => `${'{ inner '.repeat(levels - 1)}{ leaf }${' }'.repeat(levels - 1)}`

describe('the limit on depth', () => {
  const rule = limitDepth(4)

  test.each([
    ['plain fields', nested(4), nested(5)],
    [
      'named fragments',
      'fragment F on Query { inner { leaf } } { inner { list { ...F } } }',
      'fragment F on Query { inner { inner { leaf } } } fragment G on Query { inner { ...F } } { inner { ...G } }',
    ],
    [
      'inline fragments',
      '{ ... { inner { ... on Query { inner { inner { leaf } } } } } }',
      '{ inner { ... { inner { inner { inner { ... { leaf } } } } } } }',
    ],
  ])('counts %s', (_what, allowed, tooDeep) => {
    expect(reasons(allowed, rule)).toEqual([])
    expect(reasons(tooDeep, rule)).toEqual(['too-deep'])
  })

  test('looks at every operation and at every branch', () => {
    expect(
      reasons(`query A { leaf } query B ${nested(5)} query C { leaf inner ${nested(4)} }`, rule),
    ).toEqual(['too-deep', 'too-deep'])
  })

  test('measures a fragment once, however often fragments spread it', () => {
    const chain = Array.from(
      { length: 60 },
      (_, i) => `fragment F${i} on Query { ...F${i + 1} ...F${i + 1} }`,
    )
    expect(reasons(`${chain.join(' ')} fragment F60 on Query ${nested(5)} { ...F0 }`, rule)).toEqual([
      'too-deep',
    ])
  })

  test('counts a fragment wherever it is spread, deep below and first at the top', () => {
    const fragment = 'fragment F on Query { inner { inner { leaf } } }'
    expect(reasons(`{ ...F inner { ...F } } ${fragment}`, rule)).toEqual([])
    expect(reasons(`{ ...F inner { inner { ...F } } } ${fragment}`, rule)).toEqual(['too-deep'])
  })

  test('comes to an end on a circular fragment, which another rule refuses', () => {
    expect(
      reasons('fragment A on Query { inner { ...B } } fragment B on Query { inner { ...A } } { ...A }', rule),
    ).toEqual([])
    expect(reasons('{ ...Missing }', rule)).toEqual([])
  })

  test('lets the usual introspection query by', () => {
    expect(
      reasons('{ __schema { types { fields { type { ofType { ofType { name } } } } } } leaf }', rule),
    ).toEqual([])
  })
})

describe('the limit on aliases', () => {
  const rule = limitAliases(3)

  test.each(['leaf', '__typename'])('counts those of %s in the whole document, and is told once', (field) => {
    const aliases = (count: number) => Array.from({ length: count }, (_, i) => `a${i}: ${field}`).join(' ')
    expect(reasons(`{ ${aliases(3)} leaf leaf leaf }`, rule)).toEqual([])
    expect(reasons(`{ ${aliases(9)} }`, rule)).toEqual(['too-many-aliases'])
    expect(reasons(`{ ${aliases(2)} inner { ...F } } fragment F on Query { ${aliases(2)} }`, rule)).toEqual([
      'too-many-aliases',
    ])
  })
})

describe('the limit on directives', () => {
  const rule = limitDirectives(3)

  test('counts those of the whole document, and is told once', () => {
    const leaf = (count: number) => `leaf ${'@include(if: true) '.repeat(count)}`
    expect(reasons(`{ ${leaf(3)} }`, rule)).toEqual([])
    expect(reasons(`{ ${leaf(1000)} }`, rule)).toEqual(['too-many-directives'])
    expect(reasons(`{ ${leaf(2)} ...F } fragment F on Query { ${leaf(2)} }`, rule)).toEqual([
      'too-many-directives',
    ])
  })
})

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { DomainError } from '../../src/core/fault.ts'
import { readCursor, writeCursor } from '../../src/edges/categoryCursor.ts'

const filters = fc.record({
  group: fc.option(fc.constantFrom('audio', 'video'), { nil: undefined }),
  search: fc.option(fc.string({ minLength: 1 }), { nil: undefined }),
  includeRetired: fc.boolean(),
})
const ANYTHING = { organisation: null }
const readOf = (catalogueRevision: number) => ({ catalogueRevision, overlayRevision: 0, organisation: null })
const codes = fc.stringMatching(/^[a-z0-9]{1,20}(-[a-z0-9]{1,20}){0,2}$/)
const revisions = fc.integer({ min: 1, max: 1_000_000 })

describe('a cursor', () => {
  test('brings back what was written, and is safe in an address', () => {
    fc.assert(
      fc.property(codes, revisions, filters, (after, revision, filter) => {
        const text = writeCursor(after, readOf(revision), filter)
        expect(text).toMatch(/^[A-Za-z0-9_-]+$/)
        expect(readCursor(text, filter, ANYTHING)).toMatchObject({ after, revision })
        expect(readCursor(text, filter, { ...ANYTHING, catalogueRevision: revision })).toMatchObject({
          after,
          revision,
        })
      }),
    )
  })

  test('is refused with any other filter', () => {
    fc.assert(
      fc.property(filters, filters, (filter, other) => {
        fc.pre(JSON.stringify(filter) !== JSON.stringify(other))
        expect(() => readCursor(writeCursor('tv', readOf(1), filter), other, ANYTHING)).toThrow(DomainError)
      }),
    )
  })

  test('is refused, and never fails otherwise, where it is any other text', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(() => readCursor(text, { includeRetired: false }, ANYTHING)).toThrow(DomainError)
      }),
    )
  })
})

import { describe, expect, test } from 'vitest'
import { accepts } from '../../../src/edges/rest/accepts.ts'

describe('accepts', () => {
  test.each([
    [undefined, true],
    ['', true],
    ['application/json', true],
    ['APPLICATION/JSON; charset=utf-8', true],
    ['text/html, */*;q=0.1', true],
    ['application/*;q=0.001', true],
    ['application/*;q=0, application/json', true],
    ['application/*, application/json;q=0', false],
    ['*/*, application/*;q=0', false],
    ['application/json;q=0.000', false],
    ['application/json;q=many', false],
    ['text/html', false],
    ['application/json-patch+json', false],
    ['json', false],
  ])('%s lets JSON through: %s', (header, expected) => {
    expect(accepts(header, 'application/json')).toBe(expected)
  })
})

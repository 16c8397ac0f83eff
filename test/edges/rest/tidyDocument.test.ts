import { describe, expect, test } from 'vitest'
import { tidyDocument } from '../../../src/edges/rest/tidyDocument.ts'

const to = (name: string) => ({ $ref: `#/components/schemas/${name}` })
const documentOf = (uses: object[], schemas: object) => ({ paths: { '/x': uses }, components: { schemas } })

describe('tidyDocument', () => {
  test('leaves out what nothing refers to, however deep', () => {
    const tidy = tidyDocument(
      documentOf([to('A')], { A: { items: to('B') }, B: {}, C: { items: to('D') }, D: {} }),
    )
    expect(Object.keys(tidy.components.schemas)).toEqual(['A', 'B'])
  })

  test('gives a request schema the plain name where the answer schema is the same or is not used', () => {
    const schemas = {
      AInput: { items: to('BInput') },
      BInput: { type: 'string' },
      A: { items: to('B') },
      B: { type: 'string' },
    }
    expect(tidyDocument(documentOf([to('AInput')], schemas))).toEqual(
      documentOf([to('A')], { A: { items: to('B') }, B: { type: 'string' } }),
    )
    expect(tidyDocument(documentOf([to('AInput'), to('A')], schemas))).toEqual(
      documentOf([to('A'), to('A')], { A: { items: to('B') }, B: { type: 'string' } }),
    )
  })

  test('keeps both names where the two differ, and where what they refer to differs', () => {
    const document = documentOf([to('AInput'), to('A')], {
      AInput: { items: to('BInput') },
      BInput: { type: 'string' },
      A: { items: to('B') },
      B: { type: 'number' },
    })
    expect(tidyDocument(document)).toEqual(document)
  })

  test('unwraps a choice of one and leaves a choice of two', () => {
    const schemas = {
      A: { description: 'one', oneOf: [{ type: 'string' }] },
      B: { oneOf: [{ type: 'string' }, { type: 'null' }] },
    }
    expect(tidyDocument(documentOf([to('A'), to('B')], schemas)).components.schemas).toEqual({
      ...schemas,
      A: { description: 'one', type: 'string' },
    })
  })
})

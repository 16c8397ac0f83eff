import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import type { Category, TypicalDraw } from '../../../src/core/catalogue/category.ts'
import { checkEdit } from '../../../src/core/catalogue/checkEdit.ts'
import { categoryWith, drawWith, modeWith } from './sampleCategory.ts'

const lamp = categoryWith()
const other = categoryWith({ code: 'radio', name: 'Radio', aliases: ['wireless'] })
const catalogue = catalogueOf(1, [lamp, other])
const withDraw = (changes: Partial<TypicalDraw>) =>
  categoryWith({ modes: [modeWith({ draws: [drawWith(changes)] })] })
const edit = (after: Category, confirm = false) => checkEdit(catalogue, after, { confirm })

describe('an edit of one category', () => {
  test('that breaks no rule passes, of one that is there and of a new one', () => {
    expect(() => edit(categoryWith({ name: 'Lamp' }))).not.toThrow()
    expect(() => edit(categoryWith({ code: 'fan', name: 'Fan', aliases: [] }))).not.toThrow()
  })

  test('is refused with all its faults at once: of its shape, of the category, of names', () => {
    const shape = { pointer: '/extra', code: 'unknown-field', message: 'There is no such field.' }
    const after = { ...withDraw({ lowW: 3 }), aliases: ['wireless'] }
    expect(() => checkEdit(catalogue, after, { confirm: true, faults: [shape] })).toThrow(
      expect.objectContaining({
        faults: [
          shape,
          expect.objectContaining({ pointer: '/modes/0/draws/0/lowW', code: 'range-out-of-order' }),
          expect.objectContaining({ pointer: '/aliases/0', code: 'name-taken' }),
        ],
      }),
    )
  })

  test('that changes a figure by more than a factor of three has to be confirmed', () => {
    const after = withDraw({ highW: 12.1 })
    expect(() => edit(withDraw({ highW: 12 }))).not.toThrow()
    expect(() => edit(after)).toThrow(
      expect.objectContaining({
        code: 'large-change',
        message: expect.stringMatching(/^A draw figure would change/),
        details: expect.objectContaining({ count: 1 }),
      }),
    )
    expect(() => edit(after, true)).not.toThrow()
  })

  test('names how many figures would change where they are several', () => {
    expect(() => edit(withDraw({ lowW: 20, typicalW: 30, highW: 40 }))).toThrow(
      /^3 draw figures would change/,
    )
  })

  test('of a new category has no figure to change, however large', () => {
    const draws = [drawWith({ lowW: 100, typicalW: 200, highW: 300 })]
    expect(() =>
      edit(categoryWith({ code: 'fan', name: 'Fan', aliases: [], modes: [modeWith({ draws })] })),
    ).not.toThrow()
  })
})

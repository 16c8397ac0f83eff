import { describe, expect, test } from 'vitest'
import { auditOfOverlay } from '../../../src/core/catalogue/auditOfOverlay.ts'
import { fixedFieldFaults } from '../../../src/core/catalogue/categoryContent.ts'
import { authorOf } from '../../../src/core/catalogue/revision.ts'
import { categoryWith } from './sampleCategory.ts'

const origin = {
  caller: { organisation: 'ours', keyId: 'k1', scopes: ['catalogue:edit'] },
  requestId: 'r1',
} as const

describe('the author of a revision', () => {
  test('is the organisation and the key behind the request', () => {
    expect(authorOf({ origin })).toEqual({ organisation: 'ours', keyId: 'k1' })
  })

  test('is the service itself where no request is behind it', () => {
    expect(authorOf({ origin: null })).toEqual({ organisation: 'system', keyId: null })
  })
})

describe('what the audit trail says of an edit of an overlay', () => {
  const [before, category] = [categoryWith(), categoryWith({ name: 'Lamp' })]
  const edit = { code: 'lava-lamp', category, origin, reason: 'Measured.', at: new Date(0) }

  test('is the category at the revision before and at this one', () => {
    expect(auditOfOverlay({ ...edit, action: 'change' }, 4, before)).toMatchObject({
      action: 'overlay.change',
      concerns: 'ours',
      before: { overlayRevision: 3, category: before },
      after: { overlayRevision: 4, category, reason: 'Measured.' },
    })
  })

  test('is nothing before where the category did not lie over the shared catalogue', () => {
    expect(auditOfOverlay({ ...edit, action: 'lay' }, 1, null).before).toBeNull()
  })
})

describe('what content may not say', () => {
  const found = (code: string, retired?: boolean) =>
    fixedFieldFaults({ code, ...(retired !== undefined && { retired }) }, 'lava-lamp', false).map(
      (fault) => `${fault.pointer} ${fault.code}`,
    )

  test('is another code, or another state of retirement', () => {
    expect(found('wax-lamp')).toEqual(['/code code-fixed'])
    expect(found('lava-lamp', true)).toEqual(['/retired retired-fixed'])
    expect(found('wax-lamp', true)).toEqual(['/code code-fixed', '/retired retired-fixed'])
  })

  test('is none of what is so already, or is left out', () => {
    expect(found('lava-lamp')).toEqual([])
    expect(found('lava-lamp', false)).toEqual([])
  })
})

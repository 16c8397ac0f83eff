import type { z } from 'zod'
import type { categoryAnswerSchema } from '../../../schemas/category.ts'
import type {
  overlayListSchema,
  overlayRevisionAnswerSchema,
  overlayRevisionListSchema,
  overlayRevisionSchema,
  removedCategorySchema,
} from '../../../schemas/overlay.ts'
import { exampleCategory } from '../examples.ts'
import { ownBoiler } from './requestExamples.ts'

/** The examples of answers about an organisation's own figures; all of it is invented. */
const stored = {
  ...ownBoiler,
  aliases: [...ownBoiler.aliases],
  modes: ownBoiler.modes.map((mode) => ({ ...mode, draws: [...mode.draws] })),
}
export const exampleOwnCategory = {
  ...stored,
  sampleData: false,
  layer: 'organisation',
} satisfies z.output<typeof categoryAnswerSchema>

export const exampleOverlayList = {
  items: [exampleOwnCategory],
  nextCursor: null,
  overlayRevision: 1,
} satisfies z.output<typeof overlayListSchema>

const author = { organisation: 'example-utility', keyId: 'mfrggzdfmztwq2lk' }
const laid = {
  number: 1,
  action: 'lay',
  code: ownBoiler.code,
  author,
  reason: 'Read in 42 homes',
  at: '2026-02-03T10:15:00.000Z',
} satisfies z.output<typeof overlayRevisionSchema>

export const exampleOverlayRevisionList = {
  items: [laid],
  nextCursor: null,
  overlayRevision: 1,
} satisfies z.output<typeof overlayRevisionListSchema>

export const exampleOverlayRevision = {
  ...laid,
  before: null,
  after: stored,
  fields: [],
} satisfies z.output<typeof overlayRevisionAnswerSchema>

export const exampleRemovedCategory = {
  revision: { ...laid, number: 2, action: 'remove', code: 'television', reason: 'The shared one is better' },
  shared: exampleCategory,
  overlayRevision: 2,
} satisfies z.output<typeof removedCategorySchema>

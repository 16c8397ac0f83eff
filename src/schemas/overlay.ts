import { z } from 'zod'
import type { FieldChange } from '../core/catalogue/fieldChanges.ts'
import {
  OVERLAY_ACTIONS,
  type OverlayRevision,
  type OverlayRevisionChange,
} from '../core/catalogue/overlayRevision.ts'
import { fieldChangeSchema } from './catalogueRevision.ts'
import { categoryAnswerSchema, categorySchema } from './category.ts'
import { overlayRevisionText, overlayRevisionUsed } from './layer.ts'
import { pageOf, pageQuery } from './paging.ts'

/** The organisation's own categories. */
export const overlayListSchema = pageOf(categoryAnswerSchema)
  .extend({ overlayRevision: overlayRevisionUsed })
  .meta({ id: 'OverlayList' })
export const overlayQuerySchema = z.strictObject({
  overlayRevision: overlayRevisionText.optional(),
  ...pageQuery,
})

export const overlayRevisionSchema = z
  .strictObject({
    number: z.int(),
    action: z
      .enum(OVERLAY_ACTIONS)
      .describe('lay: it is new over the shared catalogue; remove: the shared figure is back'),
    code: z.string().describe('The category that it is about'),
    author: z.strictObject({ organisation: z.string(), keyId: z.string().nullable() }),
    reason: z.string(),
    at: z.iso.datetime(),
  })
  .meta({ id: 'OverlayRevision', description: "One numbered state of your organisation's own figures" })

export const overlayRevisionListSchema = pageOf(overlayRevisionSchema)
  .extend({ overlayRevision: z.int().describe('The newest; 0 where there is none') })
  .meta({ id: 'OverlayRevisionList' })
export const overlayRevisionListQuerySchema = z.strictObject(pageQuery)

export const overlayRevisionAnswerSchema = overlayRevisionSchema
  .extend({
    before: categorySchema.nullable().describe('null: it did not lie over the shared catalogue'),
    after: categorySchema.nullable().describe('null: it was taken away'),
    fields: z
      .array(fieldChangeSchema)
      .describe('Every field that differs, where there is a before and after'),
  })
  .meta({ id: 'OverlayRevisionWithChange' })

/** What is there after an own category was taken away. */
export const removedCategorySchema = z
  .strictObject({
    revision: overlayRevisionSchema,
    shared: categoryAnswerSchema
      .nullable()
      .describe('The shared category, which is back; null: the code was your own, and is gone'),
    overlayRevision: z.int(),
  })
  .meta({ id: 'RemovedCategory' })

export const showOverlayRevision = (revision: OverlayRevision): z.output<typeof overlayRevisionSchema> => ({
  number: revision.number,
  action: revision.action,
  code: revision.code,
  author: revision.author,
  reason: revision.reason,
  at: revision.at.toISOString(),
})

export const showOverlayChange = ({
  before,
  after,
  fields,
  ...revision
}: OverlayRevisionChange & { readonly fields: readonly FieldChange[] }) => ({
  ...showOverlayRevision(revision),
  before,
  after,
  fields,
})

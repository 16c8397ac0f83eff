import { z } from 'zod'
import { MODES } from '../core/catalogue/category.ts'
import { categorySchema } from './category.ts'
import { layer } from './layer.ts'
import { plainText } from './common.ts'

/** Why somebody edits; kept with the revision for ever. */
export const editReason = plainText(500).min(3)

/**
 * Reason and confirmation are parameters of the address and not members of the body: the body of an edit is the category
 * itself, a patch of it, a file, or nothing at all, and so all edits are given them in the same way.
 */
const editShape = {
  reason: editReason.describe('Why; kept with the revision, 3 to 500 characters'),
  confirm: z
    .stringbool()
    .default(false)
    .describe('Whether draw figures may change by more than a factor of three, or go'),
}
export const editQuerySchema = z.strictObject(editShape)
export const reasonQuerySchema = editQuerySchema.pick({ reason: true })

export const importQuerySchema = z
  .strictObject({
    ...editShape,
    reason: editShape.reason.optional().describe('Why; needed unless dryRun is true'),
    dryRun: z.stringbool().default(false).describe('Whether to tell what would happen, and store nothing'),
    retireMissing: z
      .stringbool()
      .default(false)
      .describe('Whether categories that the file does not speak of are retired'),
    delimiter: z.enum(['comma', 'semicolon']).optional().describe('Of a CSV file; found out by default'),
    decimal: z.enum(['point', 'comma']).optional().describe('Of a CSV file; found out by default'),
  })
  .superRefine(({ dryRun, reason }, context) => {
    if (!dryRun && reason === undefined)
      context.addIssue({
        code: 'custom',
        path: ['reason'],
        message: 'A reason is needed, unless dryRun is true',
        params: { code: 'required' },
      })
  })

const { retired, ...editable } = categorySchema.shape

/**
 * A category as an editor sends it. What answers add to it may be sent back, so that an answer can be changed and returned:
 * `retired` where it is as it is now, and `sampleData` and `layer`, which are not looked at.
 */
export const categoryContentSchema = z
  .strictObject({
    ...editable,
    retired: retired
      .optional()
      .describe('As it is now, or left out: retiring and restoring are acts of their own'),
    sampleData: z.boolean().optional().describe('Follows from the figures; what is sent is not looked at'),
    layer: layer.optional().describe('Follows from the address; what is sent is not looked at'),
  })
  .meta({ id: 'CategoryContent' })

/** What a merge patch made of a category. A null removes a member (RFC 7396), and a category without keepPowered need not be. */
export const patchedCategorySchema = z.strictObject({
  ...categoryContentSchema.shape,
  keepPowered: categorySchema.shape.keepPowered.default(null),
})

export const categoryPatchSchema = z.looseObject({}).meta({
  id: 'CategoryPatch',
  description:
    'Members of a category as they are to become (RFC 7396). Lists are replaced as a whole; keepPowered: null takes it away.',
})

/** Members of the list that an import takes: whole categories, as exports give them. */
export const importedCategorySchema = z
  .strictObject({
    ...categorySchema.shape,
    sampleData: z.boolean().optional().describe('Follows from the figures; what is sent is not looked at'),
    layer: layer.optional().describe('Follows from the address; what is sent is not looked at'),
  })
  .meta({ id: 'ImportedCategory' })

/** One draw figure that an edit would change very much; see core/catalogue/largeChanges.ts. */
export const largeChangeSchema = z
  .strictObject({
    category: z.string().optional().describe('Where several categories are edited'),
    pointer: z.string().describe('Where in the category as it would become'),
    mode: z.enum(MODES),
    yearFrom: z.int().nullable(),
    yearTo: z.int().nullable(),
    figure: z.enum(['lowW', 'typicalW', 'highW']),
    beforeW: z.number(),
    afterW: z.number().nullable().describe('null: no draw speaks of these years any more'),
  })
  .meta({ id: 'LargeChange' })

import { z } from 'zod'
import { GROUPS, KEEP_POWERED_REASONS, MODES, PROVENANCE_KINDS } from '../core/catalogue/category.ts'
import { layer, overlayRevisionText, overlayRevisionUsed } from './layer.ts'
import { LIMITS, nonNegative, plainText, shortText } from './common.ts'

const categoryCode = z
  .string()
  .max(64)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'must be kebab-case: small letters and digits joined by single hyphens')

const year = z.int().min(LIMITS.yearFrom).max(LIMITS.yearTo)

const provenanceSchema = z
  .strictObject({
    kind: z.enum(PROVENANCE_KINDS),
    citation: plainText(500).nullable(),
    n: z.int().positive().nullable(),
  })
  .meta({
    id: 'Provenance',
    description: 'sample = invented; published = with citation; programme = from n readings',
  })

export const typicalDrawSchema = z
  .strictObject({
    yearFrom: year.nullable(),
    yearTo: year.nullable(),
    lowW: nonNegative(LIMITS.watts),
    typicalW: nonNegative(LIMITS.watts),
    highW: nonNegative(LIMITS.watts),
    provenance: provenanceSchema,
  })
  .meta({ id: 'TypicalDraw', description: '5th, 50th and 95th percentile in W over devices in use' })

const categoryModeSchema = z
  .strictObject({
    mode: z.enum(MODES),
    defaultHoursPerWeek: nonNegative(168),
    draws: z.array(typicalDrawSchema).min(1).max(50),
  })
  .meta({ id: 'CategoryMode' })

const powerFactor = z.number().gt(0).max(1)

/** A category as it is stored, imported and answered. Rules between fields are in core/catalogue/checkCategory.ts. */
export const categorySchema = z
  .strictObject({
    code: categoryCode,
    name: shortText,
    group: z.enum(GROUPS),
    aliases: z.array(shortText).max(50),
    defaultQuantity: z.int().positive().max(LIMITS.quantity),
    retired: z.boolean(),
    keepPowered: z
      .strictObject({ reason: z.enum(KEEP_POWERED_REASONS), note: plainText(500).min(1) })
      .nullable(),
    powerFactor: z.strictObject({ low: powerFactor, typical: powerFactor, high: powerFactor }),
    modes: z.array(categoryModeSchema).min(1).max(5),
  })
  .meta({ id: 'Category' })

/** A category as it is answered: says whether any of its figures is invented, and whose it is. */
export const categoryAnswerSchema = categorySchema
  .extend({ sampleData: z.boolean(), layer: layer.describe("organisation: your organisation's own figures") })
  .meta({ id: 'CategoryAnswer' })

export const categoryListSchema = z
  .strictObject({
    items: z.array(categoryAnswerSchema),
    nextCursor: z.string().nullable(),
    catalogueRevision: z.int(),
    overlayRevision: overlayRevisionUsed,
  })
  .meta({ id: 'CategoryList' })

export const categoryQuerySchema = z.strictObject({
  group: z.enum(GROUPS).optional(),
  /** Finds in code, name and aliases. */
  search: plainText(100).min(1).optional(),
  includeRetired: z.stringbool().default(false),
  catalogueRevision: z.coerce.number().int().positive().optional(),
  overlayRevision: overlayRevisionText.optional(),
  limit: z.coerce.number().int().min(1).max(200).default(50),
  cursor: z.string().max(500).optional(),
})

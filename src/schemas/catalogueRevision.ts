import { z } from 'zod'
import { CHANGE_KINDS, type CategoryChange } from '../core/catalogue/categoryChange.ts'
import type { FieldChange } from '../core/catalogue/fieldChanges.ts'
import { type Revision, REVISION_ACTIONS } from '../core/catalogue/revision.ts'
import { categorySchema } from './category.ts'
import { pageOf, pageQuery } from './paging.ts'

/** A revision's number, as a part of an address. */
export const revisionNumber = z.coerce.number().int().positive().max(2_147_483_647)

export const revisionSchema = z
  .strictObject({
    number: z.int(),
    action: z.enum(REVISION_ACTIONS),
    author: z.strictObject({
      organisation: z.string().describe('"system" is the service itself'),
      keyId: z.string().nullable().describe("Which of the organisation's keys"),
    }),
    reason: z.string(),
    at: z.iso.datetime(),
  })
  .meta({
    id: 'Revision',
    description:
      'One numbered state of the catalogue, or of tariffs and emission factors, and what its author said of it',
  })

export const revisionListSchema = pageOf(revisionSchema)
  .extend({ catalogueRevision: z.int().describe('The newest') })
  .meta({ id: 'RevisionList' })
export const revisionListQuerySchema = z.strictObject(pageQuery)

export const fieldChangeSchema = z
  .strictObject({
    pointer: z.string().describe('JSON Pointer (RFC 6901) into what was changed'),
    before: z.unknown().optional(),
    after: z.unknown().optional(),
  })
  .meta({ id: 'FieldChange', description: 'A list whose members are other ones is one field, as a whole' })

/** What happened to a category, in short. */
export const changeSchema = z
  .strictObject({
    code: z.string(),
    name: z.string().describe('As it is afterwards'),
    kind: z.enum(CHANGE_KINDS),
    fields: z.array(fieldChangeSchema).describe('Every field that differs; none of a category that is new'),
  })
  .meta({ id: 'Change' })

const wholeChangeSchema = changeSchema
  .extend({ before: categorySchema.nullable(), after: categorySchema })
  .meta({ id: 'CategoryChange' })

export const changeCountsSchema = z
  .strictObject({ added: z.int(), changed: z.int(), retired: z.int(), restored: z.int() })
  .meta({ id: 'ChangeCounts' })

/** Changes come in pages, since an import may have ten thousand. */
export const changesQuerySchema = z.strictObject(pageQuery)

export const revisionAnswerSchema = revisionSchema
  .extend({
    changeCount: z.int().describe('Categories that it changed, on all pages'),
    changes: z.array(wholeChangeSchema),
    nextCursor: z.string().nullable(),
  })
  .meta({ id: 'RevisionWithChanges' })

export const comparisonSchema = z
  .strictObject({
    from: z.int(),
    to: z.int(),
    counts: changeCountsSchema,
    changes: z
      .array(changeSchema)
      .describe('In the order of the codes; what lacks in `to` counts as retired'),
    nextCursor: z.string().nullable(),
  })
  .meta({ id: 'RevisionComparison' })

export const restoredRevisionSchema = z
  .strictObject({
    restored: z.int().describe('The revision that the catalogue is as at now'),
    revision: revisionSchema.nullable().describe('The one that this made; null where nothing had to change'),
    counts: changeCountsSchema,
    catalogueRevision: z.int(),
  })
  .meta({ id: 'RestoredRevision' })

export const showRevision = ({
  number,
  action,
  author,
  reason,
  at,
}: Revision): z.output<typeof revisionSchema> => ({
  number,
  action,
  author,
  reason,
  at: at.toISOString(),
})

type ShownChange = z.output<typeof changeSchema>
export const showField = (field: FieldChange) => field as ShownChange['fields'][number]

export const showChange = ({ code, kind, after, fields }: CategoryChange): ShownChange => ({
  code,
  name: after.name,
  kind,
  fields: fields.map(showField),
})

export const showWholeChange = (change: CategoryChange) => ({
  ...showChange(change),
  before: change.before,
  after: change.after,
})

import { z } from 'zod'
import { CHANGE_KINDS } from '../core/catalogue/categoryChange.ts'
import type { Revision } from '../core/catalogue/revision.ts'
import type { ReferenceChange } from '../core/reference/referenceChange.ts'
import { REFERENCE_KINDS } from '../core/reference/referenceEntry.ts'
import { fieldChangeSchema, revisionSchema, showField, showRevision } from './catalogueRevision.ts'
import { namedEmissionFactorSchema } from './emissionFactor.ts'
import { pageOf } from './paging.ts'
import { namedTariffSchema } from './tariff.ts'

export const referenceRevisionListSchema = pageOf(revisionSchema)
  .extend({ referenceRevision: z.int().describe('The newest') })
  .meta({ id: 'ReferenceRevisionList' })

const entrySchema = z.union([namedTariffSchema, namedEmissionFactorSchema])

const changeSchema = z
  .strictObject({
    of: z.enum(REFERENCE_KINDS).describe('What was changed'),
    code: z.string(),
    kind: z.enum(CHANGE_KINDS),
    fields: z.array(fieldChangeSchema).describe('Every field that differs; none of an entry that is new'),
    before: entrySchema.nullable().describe('null: the entry is new'),
    after: entrySchema,
  })
  .meta({ id: 'ReferenceChange' })

export const referenceRevisionSchema = revisionSchema
  .extend({ changes: z.array(changeSchema).describe('Tariffs first, each in the order of the codes') })
  .meta({ id: 'ReferenceRevisionWithChanges' })

export const showReferenceRevision = (revision: Revision, changes: readonly ReferenceChange[]) => ({
  ...showRevision(revision),
  changes: changes.map(({ code, kind, before, after, fields }) => ({
    of: after.kind,
    code,
    kind,
    fields: fields.map(showField),
    before: before?.content ?? null,
    after: after.content,
  })),
})

import { z } from 'zod'
import { largeChangeSchema } from './catalogueEdit.ts'
import { changeCountsSchema, changeSchema, revisionSchema } from './catalogueRevision.ts'

const recognisedSchema = z
  .strictObject({
    delimiter: z.enum([',', ';']),
    decimal: z.enum(['.', ',']).nullable().describe('null: no figure in the file has a fraction'),
  })
  .meta({ id: 'RecognisedCsv', description: 'How a CSV file turned out to be written' })

const badRowSchema = z
  .strictObject({
    line: z.int().nullable().describe('Of a CSV file, from 1'),
    column: z.string().nullable().describe('Of a CSV file, by its header; null: the whole line'),
    pointer: z.string().nullable().describe('Of a JSON document (RFC 6901)'),
    code: z.string(),
    message: z.string(),
  })
  .meta({ id: 'BadRow' })

/** What an import did or, in a dry run, would do. */
export const importReportSchema = z
  .strictObject({
    dryRun: z.boolean(),
    recognised: recognisedSchema.nullable().describe('null: the body is JSON'),
    rows: z.int(),
    counts: changeCountsSchema.extend({
      unchanged: z.int().describe('Categories of the file that are in the catalogue just so'),
    }),
    changes: z.array(changeSchema),
    largeChanges: z.array(largeChangeSchema).describe('Where there are any, an import needs confirm=true'),
    badRows: z.array(badRowSchema).describe('Where there are any, an import is refused'),
    badRowCount: z.int().describe('All of them; the first 1,000 are listed'),
    revision: revisionSchema.nullable().describe('null: nothing was stored'),
    catalogueRevision: z.int(),
  })
  .meta({ id: 'ImportReport' })

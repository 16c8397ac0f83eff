import { z } from 'zod'
import type { IntakeHousehold } from '../core/inventory/intake.ts'
import { localId } from './common.ts'
import { estimateSchema } from './estimate.ts'
import { householdSchema } from './household.ts'
import { visitSchema } from './inventory.ts'

/** One line of NDJSON, and what a row of CSV is turned into. */
export const intakeHouseholdSchema = z
  .strictObject({
    reference: localId.optional().describe('Your own name for the household; required where it is kept'),
    date: visitSchema.shape.date.optional(),
    notes: visitSchema.shape.notes,
    ...householdSchema.omit({ catalogueRevision: true }).shape,
  })
  .meta({ id: 'IntakeHousehold' }) satisfies z.ZodType<IntakeHousehold>

const DETAILS = ['full', 'total'] as const

const truth = z.enum(['true', 'false']).transform((text) => text === 'true')

export const intakeQuerySchema = z
  .strictObject({
    store: truth.default(false).describe('Whether the households are kept, each with its estimate'),
    batch: localId
      .optional()
      .describe(
        'Your own name for the batch; required with store=true. The same line of the same batch is never stored twice',
      ),
    after: z.coerce
      .number()
      .int()
      .min(0)
      .default(0)
      .describe(
        'Lines up to this one are passed over without an answer: the last one that you have an answer to',
      ),
    detail: z
      .enum(DETAILS)
      .default('full')
      .describe('full: whole estimates; total: their totals alone, some twenty times shorter'),
  })
  .superRefine(({ store, batch }, context) => {
    if (store && batch === undefined)
      context.addIssue({
        code: 'custom',
        path: ['batch'],
        message:
          'store=true needs the name of the batch, so that a line that is sent again is not stored twice',
        params: { code: 'required' },
      })
  })

const place = { line: z.int(), reference: z.string().nullable() }
const total = estimateSchema.pick({
  catalogueRevision: true,
  coverageProbability: true,
  currency: true,
  sampleData: true,
  total: true,
})
const figures = z.union([estimateSchema, total])
const fault = z.strictObject({ pointer: z.string(), code: z.string(), message: z.string() })

/** One line of the answer. */
export const intakeAnswerSchema = z
  .discriminatedUnion('status', [
    z.strictObject({ ...place, status: z.literal('estimated'), estimate: figures }),
    z.strictObject({
      ...place,
      status: z.enum(['stored', 'already-stored']),
      inventoryId: z.string(),
      estimateId: z.string(),
      estimate: figures,
    }),
    z.strictObject({
      ...place,
      status: z.literal('problem'),
      code: z.string(),
      detail: z.string(),
      errors: z.array(fault).optional(),
      inventoryId: z.string().optional().describe('The inventory that is in the way'),
    }),
    z.strictObject({
      status: z.enum(['done', 'broken-off']),
      lines: z.int().describe('Lines that were answered'),
      lastLine: z.int().describe('The last of them: where to go on, as after=…'),
      estimated: z.int(),
      stored: z.int(),
      alreadyStored: z.int(),
      problems: z.int(),
      code: z.string().optional().describe('Why it was broken off'),
      detail: z.string().optional(),
    }),
  ])
  .meta({ id: 'IntakeAnswer' })
export type IntakeAnswer = z.input<typeof intakeAnswerSchema>

import { z } from 'zod'
import { CAUTION_PLACES } from '../core/cautions/caution.ts'
import { SOURCE_MARKS } from '../core/emissions/emissionFactor.ts'
import { localId, plainText } from './common.ts'

/** One caution as the service keeps it. */
export const keptCautionSchema = z
  .strictObject({
    code: localId,
    message: plainText(1_000).min(1),
    appliesTo: z.array(z.enum(CAUTION_PLACES)).min(1),
    source: plainText(500).min(1),
    mark: z
      .enum(SOURCE_MARKS)
      .nullable()
      .describe('How well the source is confirmed; null for common practice without one'),
  })
  .meta({ id: 'KeptCaution', description: 'A safety statement, and the answers that it goes with' })

export const cautionQuerySchema = z.strictObject({ appliesTo: z.enum(CAUTION_PLACES).optional() })

export const cautionListSchema = z
  .strictObject({ items: z.array(keptCautionSchema) })
  .meta({ id: 'CautionList' })

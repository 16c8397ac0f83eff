import { z } from 'zod'
import { LEAST_DRAWS, MOST_DRAWN, MOST_DRAWS } from '../core/estimate/drawLimits.ts'
import { METHODS } from '../core/inventory/household.ts'
import { householdSchema } from './household.ts'

/** What a caller is told of, and what an edge counts with. */
export const DRAWS = { least: LEAST_DRAWS, most: MOST_DRAWS, together: MOST_DRAWN } as const

/** Body of POST /v1/estimates and input of the GraphQL query `estimate`: a household, and how its sums are worked out. */
export const estimateRequestSchema = z
  .strictObject({
    ...householdSchema.shape,
    method: z
      .enum(METHODS)
      .optional()
      .describe(
        'How sums of uncertain figures are worked out: convolved by default, which is exact to a fraction of a percent; ' +
          'or drawn, to check by. The answer says which in used.methodVersion',
      ),
    draws: z
      .int()
      .min(DRAWS.least)
      .max(DRAWS.most)
      .optional()
      .describe(
        `Draws of monte-carlo; draws times modes of devices at most ${DRAWS.together}, and by default as many as that allows`,
      ),
    seed: z
      .int()
      .min(0)
      .max(2_147_483_647)
      .optional()
      .describe('Seed of monte-carlo, 1 by default; the same seed gives the same bytes'),
    expectedWidths: z
      .boolean()
      .optional()
      .describe(
        'Whether to answer how wide the interval of the total energy would be after the next readings; false by default',
      ),
  })
  .meta({ id: 'EstimateRequest' })

import { z } from 'zod'

/** The revision of tariffs and emission factors that a question is about. */
export const referenceQuery = z.strictObject({
  referenceRevision: z.coerce
    .number()
    .int()
    .positive()
    .max(2_147_483_647)
    .optional()
    .describe('Revision of tariffs and emission factors to read; the newest by default'),
})

/** The same for lists. */
export const referenceListQuery = {
  ...referenceQuery.shape,
  includeRetired: z.stringbool().default(false).describe('Whether to list retired ones, too'),
}

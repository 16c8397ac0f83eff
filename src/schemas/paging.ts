import { z } from 'zod'

/** The parameters of every list that comes in pages. */
export const pageQuery = {
  limit: z.coerce.number().int().min(1).max(200).default(50),
  cursor: z.string().max(500).optional(),
}

/** One page of a list, and where the next one goes on: null on the last. */
export const pageOf = <T extends z.ZodType>(item: T) =>
  z.strictObject({ items: z.array(item), nextCursor: z.string().nullable() })

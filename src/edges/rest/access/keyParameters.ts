import { z } from 'zod'

/** The key that a route is about, by its id: never by the key itself. */
export const keyParameters = z.strictObject({
  id: z.string().max(100).describe('Id of the key: what stands in it between the two underlines'),
})

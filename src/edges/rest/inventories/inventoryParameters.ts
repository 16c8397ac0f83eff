import { z } from 'zod'

/** The inventory that a route is about. */
export const inventoryParameters = z.strictObject({
  id: z.string().max(100).describe('Id of the inventory'),
})

/** One estimate kept of it. */
export const estimateParameters = inventoryParameters.extend({
  estimateId: z.string().max(100).describe('Id of the stored estimate'),
})

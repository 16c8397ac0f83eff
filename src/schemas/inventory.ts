import { z } from 'zod'
import { MOST_VISITS } from '../core/inventory/checkInventory.ts'
import {
  type Inventory,
  type InventoryContent,
  termsOf,
  VISIT_KINDS,
  visitsByDate,
} from '../core/inventory/inventory.ts'
import { localId, plainText } from './common.ts'
import { householdSchema } from './household.ts'
import { pageOf, pageQuery } from './paging.ts'

const notes = plainText(2_000).describe(
  'Notes of the assessor, at most 2,000 characters; no names or addresses',
)

export const visitSchema = z
  .strictObject({
    date: z.iso.date().describe('Day of the visit; there is one visit a day'),
    notes: notes.optional(),
    meters: householdSchema.shape.meters,
    devices: householdSchema.shape.devices,
  })
  .meta({ id: 'Visit', description: 'All that was found on one day: a full state, not a change' })

/** What a caller says of a household, besides its visits. */
const content = {
  reference: localId.describe('Your own name for the household, which tells nothing of who lives there'),
  notes: notes.optional(),
  ...householdSchema.omit({
    devices: true,
    meters: true,
    catalogueRevision: true,
    overlayRevision: true,
    referenceRevision: true,
    tariffDate: true,
  }).shape,
}

export const inventoryContentSchema = z
  .strictObject({ ...content, visits: z.array(visitSchema).max(MOST_VISITS).default([]) })
  .meta({ id: 'InventoryContent' }) satisfies z.ZodType<InventoryContent>

/** A merge patch (RFC 7396) of an inventory's content. What it makes of the inventory is checked, not the patch itself. */
export const inventoryPatchSchema = z.looseObject({}).meta({
  id: 'InventoryPatch',
  description: 'Fields to change; null takes one away; visits are replaced as a whole',
})

const instant = z.iso.datetime()

export const inventorySchema = z
  .strictObject({
    id: z.string(),
    version: z.int().describe('1 when it is made, one more with every change'),
    createdAt: instant,
    updatedAt: instant,
    ...content,
    visits: z.array(
      visitSchema.extend({
        kind: z.enum(VISIT_KINDS).describe('The earliest visit is the first; later ones are follow-ups'),
      }),
    ),
  })
  .meta({ id: 'Inventory', description: "One of your organisation's households" })

const summarySchema = inventorySchema
  .pick({ id: true, version: true, createdAt: true, updatedAt: true, reference: true })
  .extend({
    visits: z.int().describe('Number of visits'),
    lastVisit: z.iso.date().nullable(),
  })
  .meta({ id: 'InventorySummary' })

export const inventoryListSchema = pageOf(summarySchema).meta({ id: 'InventoryList' })

const inventoryFilter = {
  reference: localId.optional().describe('Only the household with this reference'),
  visitedFrom: z.iso.date().optional().describe('Only those whose last visit was on this day or later'),
  visitedTo: z.iso.date().optional().describe('Only those whose last visit was on this day or earlier'),
  followedUp: z
    .enum(['true', 'false'])
    .transform((text) => text === 'true')
    .optional()
    .describe('true: only those with two visits or more; false: only those without'),
}
export const inventoryFilterSchema = z.strictObject(inventoryFilter)
export const inventoryQuerySchema = z.strictObject({ ...inventoryFilter, ...pageQuery })

/** What holds of the household on every visit, as JSON shows it. */
export const showTerms = ({ content }: Inventory) => termsOf(content)

/** An inventory as answers show it, its visits in the order of their dates. */
export const showInventory = ({ id, version, createdAt, updatedAt, content }: Inventory) => ({
  id,
  version,
  createdAt,
  updatedAt,
  ...content,
  visits: visitsByDate(content),
})

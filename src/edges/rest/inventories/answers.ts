import type { FastifyReply } from 'fastify'
import type { Inventory } from '../../../core/inventory/inventory.ts'
import { inventorySchema, showInventory } from '../../../schemas/inventory.ts'
import { jsonAnswer } from '../answers.ts'
import { inventoryHeaders } from '../conditional.ts'
import { REPLAY_HEADER } from '../idempotency.ts'
import { exampleInventory } from './examples.ts'

const TAG = {
  ETag: {
    type: 'string',
    description:
      "Tag of the inventory's version; send it as If-None-Match, or as If-Match to change or delete it",
  },
} as const

export const inventoryAnswer = (description: string) =>
  jsonAnswer(description, inventorySchema, exampleInventory, TAG)

export const madeAnswer = (description: string) =>
  jsonAnswer(description, inventorySchema, exampleInventory, {
    ...TAG,
    ...REPLAY_HEADER,
    Location: { type: 'string', description: 'Address of the inventory' },
  })

/** Answers with an inventory as it is now, and the tag that the next change is based on. */
export const sendInventory = (
  reply: FastifyReply,
  inventory: Inventory,
  status: 200 | 201 = 200,
): FastifyReply =>
  reply
    .code(status)
    .headers({
      ...inventoryHeaders(inventory),
      ...(status === 201 && { location: `/v1/inventories/${inventory.id}` }),
    })
    .send(showInventory(inventory))

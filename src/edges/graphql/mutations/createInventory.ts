import { inventoryContentSchema } from '../../../schemas/inventory.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { makeInventory } from '../../../useCases/makeInventory.ts'
import { builder } from '../builder.ts'
import { InventoryContentInput } from '../inputs/inventory.ts'
import { withContent } from '../inventoryOfInput.ts'
import { InventoryType } from '../types/inventory.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'

export const IDEMPOTENCY_KEY =
  'A key of your own for this request: sent again within 24 hours it has no second effect and the same result.'

const CreateInventoryInput = builder.inputType('CreateInventoryInput', {
  description: 'A household that is to be kept.',
  fields: (t) => ({
    content: t.field({ type: InventoryContentInput, required: true, description: 'The household.' }),
    idempotencyKey: t.string({ description: IDEMPOTENCY_KEY }),
  }),
})

const Result = mutationResult('CreateInventoryResult', 'The household, or why it is not kept.', InventoryType)

builder.mutationField('createInventory', (t) =>
  t.field({
    type: Result,
    nullable: true,
    description: "Keeps a household of your organisation's. Needs a key with the scope intake.",
    args: { input: t.arg({ type: CreateInventoryInput, required: true, description: 'The household.' }) },
    resolve: (_root, { input: { content, idempotencyKey } }, { deps, sender }) =>
      orUserError(async () => {
        const { result } = await withContent('/content', content, (given) =>
          makeInventory(deps, sender, readShape(inventoryContentSchema, given), idempotencyKey ?? null),
        )
        return result
      }),
  }),
)

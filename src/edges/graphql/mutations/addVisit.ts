import { inventoryContentSchema } from '../../../schemas/inventory.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { addVisit } from '../../../useCases/addVisit.ts'
import { builder } from '../builder.ts'
import { VisitInput } from '../inputs/inventory.ts'
import { withContent } from '../inventoryOfInput.ts'
import { InventoryType } from '../types/inventory.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'
import { IDEMPOTENCY_KEY } from './createInventory.ts'

const AddVisitInput = builder.inputType('AddVisitInput', {
  description: 'A visit of a household.',
  fields: (t) => ({
    inventoryId: t.string({ required: true, description: 'Id of the household.' }),
    visit: t.field({ type: VisitInput, required: true, description: 'What was found.' }),
    idempotencyKey: t.string({ description: IDEMPOTENCY_KEY }),
  }),
})

const Result = mutationResult(
  'AddVisitResult',
  'The household with the visit, or why it was not added.',
  InventoryType,
)

builder.mutationField('addVisit', (t) =>
  t.field({
    type: Result,
    nullable: true,
    description:
      'Adds a visit to a household; a second one on the same day is refused. Needs a key with the scope intake.',
    args: { input: t.arg({ type: AddVisitInput, required: true, description: 'The visit.' }) },
    resolve: (_root, { input: { inventoryId, visit, idempotencyKey } }, { deps, sender }) =>
      orUserError(async () => {
        const readContent = (whole: unknown) => readShape(inventoryContentSchema, whole)
        const { result } = await withContent('/visit', visit, (given) =>
          addVisit(deps, sender, inventoryId, given, readContent, idempotencyKey ?? null),
        )
        return result
      }),
  }),
)

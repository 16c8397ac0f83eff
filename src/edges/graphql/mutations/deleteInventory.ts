import { removeInventory } from '../../../useCases/removeInventory.ts'
import { builder } from '../builder.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'

const DeleteInventoryInput = builder.inputType('DeleteInventoryInput', {
  description: 'A household that is to be deleted, and on which of its versions.',
  fields: (t) => ({
    inventoryId: t.string({ required: true, description: 'Id of the household.' }),
    basedOn: t.int({ required: true, description: '`version` of the household as it was read.' }),
  }),
})

interface Deleted {
  readonly inventoryId: string
}
const DeletedInventoryType = builder.objectRef<Deleted>('DeletedInventory').implement({
  description: 'A household that is gone.',
  fields: (t) => ({ inventoryId: t.exposeString('inventoryId', { description: 'What its id was.' }) }),
})

const Result = mutationResult(
  'DeleteInventoryResult',
  'What was deleted, or why it was not.',
  DeletedInventoryType,
)

builder.mutationField('deleteInventory', (t) =>
  t.field({
    type: Result,
    nullable: true,
    description:
      'Deletes a household with its visits and stored estimates, for good. Needs a key with the scope intake.',
    args: { input: t.arg({ type: DeleteInventoryInput, required: true, description: 'The household.' }) },
    resolve: (_root, { input: { inventoryId, basedOn } }, { deps, sender }) =>
      orUserError(async () => {
        await removeInventory(deps, sender, inventoryId, [basedOn])
        return { inventoryId }
      }),
  }),
)

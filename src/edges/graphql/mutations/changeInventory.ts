import { inventoryContentSchema } from '../../../schemas/inventory.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { changeInventory } from '../../../useCases/changeInventory.ts'
import { builder } from '../builder.ts'
import { InventoryChangesInput } from '../inputs/inventory.ts'
import { patchOfChanges, withContent } from '../inventoryOfInput.ts'
import { InventoryType } from '../types/inventory.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'

const ChangeInventoryInput = builder.inputType('ChangeInventoryInput', {
  description: 'What is to change of a household, and on which of its versions.',
  fields: (t) => ({
    inventoryId: t.string({ required: true, description: 'Id of the household.' }),
    basedOn: t.int({
      required: true,
      description: '`version` of the household as it was read; stale where it was changed since.',
    }),
    changes: t.field({ type: InventoryChangesInput, required: true, description: 'What is to change.' }),
  }),
})

const Result = mutationResult(
  'ChangeInventoryResult',
  'The household as it is now, or why it was not changed.',
  InventoryType,
)

builder.mutationField('changeInventory', (t) =>
  t.field({
    type: Result,
    nullable: true,
    description: 'Changes fields of a household. Needs a key with the scope intake.',
    args: { input: t.arg({ type: ChangeInventoryInput, required: true, description: 'The change.' }) },
    resolve: (_root, { input: { inventoryId, basedOn, changes } }, { deps, sender }) =>
      orUserError(() =>
        withContent('/changes', changes, (given) =>
          changeInventory(
            deps,
            sender,
            inventoryId,
            patchOfChanges(changes, given),
            (merged) => readShape(inventoryContentSchema, merged),
            [basedOn],
          ),
        ),
      ),
  }),
)

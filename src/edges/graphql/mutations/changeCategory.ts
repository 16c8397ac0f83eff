import { patchedCategorySchema } from '../../../schemas/catalogueEdit.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { patchCategory } from '../../../useCases/patchCategory.ts'
import { builder } from '../builder.ts'
import { modesOfInput } from '../categoryOfInput.ts'
import { editOptions, faultsUnder } from '../editOptions.ts'
import { CategoryChangesInput } from '../inputs/category.ts'
import { LargeChangeErrorType, StaleCategoryErrorType } from '../types/editErrors.ts'
import { EditedCategoryType } from '../types/editedCategory.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'

const ChangeCategoryInput = builder.inputType('ChangeCategoryInput', {
  description: 'What is to change of a category, on which of its states, and why.',
  fields: (t) => ({
    code: t.string({ required: true, description: 'Code of the category; not a name or alias.' }),
    basedOn: t.int({
      required: true,
      description: '`changedInRevision` of the category as it was read; stale where it was edited since.',
    }),
    changes: t.field({ type: CategoryChangesInput, required: true, description: 'What is to change.' }),
    reason: t.string({
      required: true,
      description: 'Why; kept with the revision, 3 to 500 characters.',
    }),
    confirm: t.boolean({
      description: 'Whether draw figures may change by more than a factor of three, or go; false by default.',
    }),
  }),
})

const Result = mutationResult(
  'ChangeCategoryResult',
  'The category as it is now, or why it was not changed.',
  EditedCategoryType,
  [StaleCategoryErrorType, LargeChangeErrorType],
)

builder.mutationField('changeCategory', (t) =>
  t.field({
    type: Result,
    nullable: true,
    description:
      'Changes fields of a category, as one new revision. Needs a key with the scope catalogue:edit.',
    args: { input: t.arg({ type: ChangeCategoryInput, required: true, description: 'The change.' }) },
    resolve: (_root, { input: { code, changes, ...said } }, { deps, sender }) =>
      orUserError(async () => {
        const options = editOptions(sender, said)
        const { modes, ...rest } = changes
        const patch = { ...rest, ...(modes !== undefined && { modes: modes && modesOfInput(modes) }) }
        const readContent = (merged: unknown) => readShape(patchedCategorySchema, merged)
        return faultsUnder('/changes', () => patchCategory(deps, sender, code, patch, readContent, options))
      }),
  }),
)

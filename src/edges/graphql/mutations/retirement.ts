import { restoreCategory } from '../../../useCases/restoreCategory.ts'
import { retireCategory } from '../../../useCases/retireCategory.ts'
import { builder } from '../builder.ts'
import { editOptions } from '../editOptions.ts'
import { StaleCategoryErrorType } from '../types/editErrors.ts'
import { EditedCategoryType } from '../types/editedCategory.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'

const inputNamed = (name: string, description: string) =>
  builder.inputType(name, {
    description,
    fields: (t) => ({
      code: t.string({ required: true, description: 'Code of the category; not a name or alias.' }),
      basedOn: t.int({
        required: true,
        description: '`changedInRevision` of the category as it was read; stale where it was edited since.',
      }),
      reason: t.string({
        required: true,
        description: 'Why; kept with the revision, 3 to 500 characters.',
      }),
    }),
  })

const RetireResult = mutationResult(
  'RetireCategoryResult',
  'The retired category, or why it was not retired.',
  EditedCategoryType,
  [StaleCategoryErrorType],
)
const RestoreResult = mutationResult(
  'RestoreCategoryResult',
  'The category, in use again, or why it is not. A name that another category has taken is a FaultyInputError.',
  EditedCategoryType,
  [StaleCategoryErrorType],
)
const RetireInput = inputNamed('RetireCategoryInput', 'Which category is to be retired, and why.')
const RestoreInput = inputNamed('RestoreCategoryInput', 'Which category is to come back, and why.')

builder.mutationField('retireCategory', (t) =>
  t.field({
    type: RetireResult,
    nullable: true,
    description:
      'Takes a category out of lists and suggestions, as one new revision; nothing of it is lost. Needs a key with the scope catalogue:edit.',
    args: { input: t.arg({ type: RetireInput, required: true, description: 'The category.' }) },
    resolve: (_root, { input: { code, ...said } }, { deps, sender }) =>
      orUserError(async () => retireCategory(deps, sender, code, editOptions(sender, said))),
  }),
)

builder.mutationField('restoreCategory', (t) =>
  t.field({
    type: RestoreResult,
    nullable: true,
    description:
      'Brings a retired category back as it is, as one new revision. Needs a key with the scope catalogue:edit.',
    args: { input: t.arg({ type: RestoreInput, required: true, description: 'The category.' }) },
    resolve: (_root, { input: { code, ...said } }, { deps, sender }) =>
      orUserError(async () => restoreCategory(deps, sender, code, editOptions(sender, said))),
  }),
)

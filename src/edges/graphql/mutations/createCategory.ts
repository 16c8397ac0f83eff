import { categoryContentSchema } from '../../../schemas/catalogueEdit.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { createCategory } from '../../../useCases/createCategory.ts'
import { builder } from '../builder.ts'
import { modesOfInput } from '../categoryOfInput.ts'
import { editOptions, faultsUnder } from '../editOptions.ts'
import { CategoryInput } from '../inputs/category.ts'
import { EditedCategoryType } from '../types/editedCategory.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'

const CreateCategoryInput = builder.inputType('CreateCategoryInput', {
  description: 'A new category, and why.',
  fields: (t) => ({
    category: t.field({ type: CategoryInput, required: true, description: 'The category.' }),
    reason: t.string({
      required: true,
      description: 'Why; kept with the revision, 3 to 500 characters.',
    }),
  }),
})

const Result = mutationResult(
  'CreateCategoryResult',
  'The new category, or why there is none. A code that is taken is a ConflictError.',
  EditedCategoryType,
)

builder.mutationField('createCategory', (t) =>
  t.field({
    type: Result,
    nullable: true,
    description:
      'Adds a category to the catalogue, as one new revision. Needs a key with the scope catalogue:edit.',
    args: { input: t.arg({ type: CreateCategoryInput, required: true, description: 'The category.' }) },
    resolve: (_root, { input: { category, reason } }, { deps, sender }) =>
      orUserError(async () => {
        const options = editOptions(sender, { reason })
        const { keepPowered = null, modes, ...rest } = category
        const content = readShape(categoryContentSchema, { ...rest, keepPowered, modes: modesOfInput(modes) })
        return faultsUnder('/category', () => createCategory(deps, sender, content, options))
      }),
  }),
)

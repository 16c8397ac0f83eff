import { z } from 'zod'
import { FaultyInput } from '../../../core/fault.ts'
import { categoryQuerySchema } from '../../../schemas/category.ts'
import { shortText } from '../../../schemas/common.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { readCategory } from '../../../useCases/readCategory.ts'
import { builder } from '../builder.ts'
import { CategoryType } from '../types/category.ts'
import { withoutNulls } from '../withoutNulls.ts'

const argumentsSchema = z.strictObject({
  code: shortText,
  catalogueRevision: categoryQuerySchema.shape.catalogueRevision,
})

/**
 * An unknown category is null and an error with code NOT_FOUND, unlike in `node`. Whoever asks by name typed it,
 * and needs to be told that it was not found and what comes nearest, as REST's 404 does; null alone cannot carry
 * the nearest, and a union of results would make every caller that has the code in hand unwrap one.
 */
builder.queryField('category', (t) =>
  t.field({
    type: CategoryType,
    nullable: true,
    description:
      'One category by its code, name or alias, whatever its case, accents and punctuation. An unknown one is an error with code NOT_FOUND whose extensions name the nearest three.',
    args: {
      code: t.arg.string({ required: true, description: 'Code, name or alias.' }),
      catalogueRevision: t.arg.int({ description: 'Catalogue revision to read; the newest by default.' }),
    },
    resolve: async (_root, args, { deps }) => {
      const { value, faults } = readShape(argumentsSchema, withoutNulls(args))
      if (value === null) throw new FaultyInput(faults)
      const found = await readCategory(deps, value.code, value.catalogueRevision)
      return { ...found, pinned: value.catalogueRevision !== undefined }
    },
  }),
)

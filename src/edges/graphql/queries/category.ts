import { z } from 'zod'
import { FaultyInput } from '../../../core/fault.ts'
import { categoryQuerySchema } from '../../../schemas/category.ts'
import { shortText } from '../../../schemas/common.ts'
import { askedOverlayRevision } from '../../../schemas/layer.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { readCategory } from '../../../useCases/readCategory.ts'
import { builder } from '../builder.ts'
import { OVERLAY_ARGUMENT } from '../overlayArgument.ts'
import { CategoryType } from '../types/category.ts'
import { withoutNulls } from '../withoutNulls.ts'

const argumentsSchema = z.strictObject({
  code: shortText,
  catalogueRevision: categoryQuerySchema.shape.catalogueRevision,
  overlayRevision: askedOverlayRevision.optional(),
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
      overlayRevision: t.arg.int({ description: OVERLAY_ARGUMENT }),
    },
    resolve: async (_root, args, { deps, sender }) => {
      const { value, faults } = readShape(argumentsSchema, withoutNulls(args))
      if (value === null) throw new FaultyInput(faults)
      const { code, ...pinned } = value
      return { ...(await readCategory(deps, sender, code, pinned)), pinned }
    },
  }),
)

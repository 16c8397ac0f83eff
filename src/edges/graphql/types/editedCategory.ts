import type { EditedCategory } from '../../../useCases/editCategory.ts'
import { builder } from '../builder.ts'
import { CatalogueRevisionType } from './catalogueRevision.ts'
import { CategoryType } from './category.ts'

export const EditedCategoryType = builder.objectRef<EditedCategory>('EditedCategory').implement({
  description: 'A category after an edit.',
  fields: (t) => ({
    category: t.field({
      type: CategoryType,
      description: 'The category as it is now.',
      resolve: ({ category, changedIn, catalogueRevision }) => ({
        category,
        changedIn,
        catalogueRevision,
        overlayRevision: 0,
        pinned: {},
      }),
    }),
    revision: t.field({
      type: CatalogueRevisionType,
      nullable: true,
      description: 'The revision that the edit made; null where nothing had to change.',
      resolve: ({ revision }) => revision,
    }),
  }),
})

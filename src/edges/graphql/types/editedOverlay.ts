import type { EditedOverlay } from '../../../useCases/editOverlay.ts'
import { builder } from '../builder.ts'
import { CategoryType } from './category.ts'
import { OverlayRevisionType } from './overlayRevision.ts'

/** An edit, and the catalogue revision that it lies over. */
export interface ShownOverlayEdit extends EditedOverlay {
  readonly catalogueRevision: number
}

export const EditedOverlayType = builder.objectRef<ShownOverlayEdit>('EditedOverlay').implement({
  description: "Your organisation's own figures after an edit.",
  fields: (t) => ({
    category: t.field({
      type: CategoryType,
      nullable: true,
      description: 'The category of your own as it is now; null where it was taken away.',
      resolve: ({ own, ...rest }) => own && { category: own, ...rest, pinned: {} },
    }),
    revision: t.field({
      type: OverlayRevisionType,
      nullable: true,
      description: 'The revision that the edit made; null where nothing had to change.',
      resolve: ({ revision }) => revision,
    }),
    overlayRevision: t.exposeInt('overlayRevision', {
      description: 'The newest revision of your own figures.',
    }),
  }),
})

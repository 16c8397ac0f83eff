import type { CategoryChange } from '../../../core/catalogue/categoryChange.ts'
import type { FieldChange } from '../../../core/catalogue/fieldChanges.ts'
import type { LabelledCategory } from '../../../core/catalogue/labelledCategory.ts'
import type { LargeChange } from '../../../core/catalogue/largeChanges.ts'
import type { Revision } from '../../../core/catalogue/revision.ts'
import { builder } from '../builder.ts'
import { CatalogueRevisionType } from './catalogueRevision.ts'
import { CategoryType } from './category.ts'
import { ModeEnum } from './enums.ts'
import { FieldChangeType } from './fieldChange.ts'
import { ChangeKindEnum } from './revisionEnums.ts'
import { type UserError, UserErrorInterface } from './userErrors.ts'

/** What the refusals of useCases/editedState.ts, basedOnNewest.ts and core/catalogue/checkEdit.ts hold. */
interface StaleCategory {
  readonly changedIn: number
  readonly lastEdit: Revision
  readonly current: LabelledCategory
  readonly changes: readonly FieldChange[] | null
}
type BriefChange = Pick<CategoryChange, 'code' | 'kind'>
interface StaleCatalogue {
  readonly newest: number
  readonly edits: readonly Revision[] | null
  readonly changes: readonly BriefChange[] | null
}
type NamedLargeChange = LargeChange & { readonly category?: string }
interface LargeChanges {
  readonly count: number
  readonly changes: readonly NamedLargeChange[]
}
/** What a refusal with the code of its type holds; the use case that refused has put it there. */
const staleCategory = ({ details }: UserError) => details as unknown as StaleCategory
const staleCatalogue = ({ details }: UserError) => details as unknown as StaleCatalogue
const largeChanges = ({ details }: UserError) => details as unknown as LargeChanges

export const StaleCategoryErrorType = builder.objectRef<UserError>('StaleCategoryError').implement({
  description:
    'The category was edited meanwhile. Look at what changed, and base the edit on the present state.',
  interfaces: [UserErrorInterface],
  fields: (t) => ({
    current: t.field({
      type: CategoryType,
      description: 'The category as it is now; its `changedInRevision` is what to base the next attempt on.',
      resolve: (error) => {
        const { current, changedIn, lastEdit } = staleCategory(error)
        return {
          category: current,
          changedIn,
          catalogueRevision: lastEdit.number,
          overlayRevision: 0,
          pinned: {},
        }
      },
    }),
    lastEdit: t.field({
      type: CatalogueRevisionType,
      description: 'The revision that gave it its present state: who, when and why.',
      resolve: (error) => staleCategory(error).lastEdit,
    }),
    changedFields: t.field({
      type: [FieldChangeType],
      nullable: true,
      description: 'What changed since the state that the edit was based on; null where that is not known.',
      resolve: (error) => staleCategory(error).changes,
    }),
  }),
})

const BriefChangeType = builder.objectRef<BriefChange>('ChangedCategory').implement({
  description: 'A category that was changed.',
  fields: (t) => ({
    code: t.exposeString('code', { description: 'Code of the category.' }),
    kind: t.expose('kind', { type: ChangeKindEnum, description: 'What happened.' }),
  }),
})

export const StaleCatalogueErrorType = builder.objectRef<UserError>('StaleCatalogueError').implement({
  description:
    'The catalogue was edited meanwhile. Look at what came since, and base the edit on the newest revision.',
  interfaces: [UserErrorInterface],
  fields: (t) => ({
    newestRevision: t.int({
      description: 'Number of the newest revision.',
      resolve: (error) => staleCatalogue(error).newest,
    }),
    edits: t.field({
      type: [CatalogueRevisionType],
      nullable: true,
      description:
        'The revisions that came since, newest first, at most 100; null where the basis is not known.',
      resolve: (error) => staleCatalogue(error).edits,
    }),
    changedCategories: t.field({
      type: [BriefChangeType],
      nullable: true,
      description: 'The categories that are concerned, at most 100; null where the basis is not known.',
      resolve: (error) => staleCatalogue(error).changes,
    }),
  }),
})

const LargeChangeType = builder.objectRef<NamedLargeChange>('LargeChange').implement({
  description: 'A draw figure that would change by more than a factor of three, or go.',
  fields: (t) => ({
    category: t.string({
      nullable: true,
      description: 'Code of the category; null where only one is edited.',
      resolve: ({ category }) => category ?? null,
    }),
    pointer: t.exposeString('pointer', {
      description: 'Where in the category as it would become; JSON Pointer (RFC 6901).',
    }),
    mode: t.expose('mode', { type: ModeEnum, description: 'The mode.' }),
    yearFrom: t.exposeInt('yearFrom', {
      nullable: true,
      description: 'First year of manufacture that this is about; null is open.',
    }),
    yearTo: t.exposeInt('yearTo', { nullable: true, description: 'Last such year; null is open.' }),
    figure: t.exposeString('figure', { description: 'lowW, typicalW or highW.' }),
    beforeW: t.exposeFloat('beforeW', { description: 'The figure now, W.' }),
    afterW: t.exposeFloat('afterW', {
      nullable: true,
      description: 'The figure as it would become, W; null where no draw would speak of these years.',
    }),
  }),
})

export const LargeChangeErrorType = builder.objectRef<UserError>('LargeChangeError').implement({
  description:
    'Draw figures would change very much. Where that is meant, send the edit again with `confirm`.',
  interfaces: [UserErrorInterface],
  fields: (t) => ({
    count: t.int({
      description: 'Number of such figures.',
      resolve: (error) => largeChanges(error).count,
    }),
    figures: t.field({
      type: [LargeChangeType],
      description: 'Each of them before and after; the first 1,000.',
      resolve: (error) => largeChanges(error).changes,
    }),
  }),
})

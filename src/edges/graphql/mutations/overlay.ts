import { categoryContentSchema, patchedCategorySchema } from '../../../schemas/catalogueEdit.ts'
import { readShape } from '../../../schemas/readShape.ts'
import type { Deps } from '../../../useCases/deps.ts'
import type { EditedOverlay } from '../../../useCases/editOverlay.ts'
import { layCategory } from '../../../useCases/layCategory.ts'
import { patchOverlay } from '../../../useCases/patchOverlay.ts'
import { removeFromOverlay } from '../../../useCases/removeFromOverlay.ts'
import { builder } from '../builder.ts'
import { modesOfInput } from '../categoryOfInput.ts'
import { faultsUnder } from '../editOptions.ts'
import { CategoryChangesInput, CategoryInput } from '../inputs/category.ts'
import { overlayOptions } from '../overlayOptions.ts'
import { EditedOverlayType } from '../types/editedOverlay.ts'
import { LargeChangeErrorType } from '../types/editErrors.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'

const REASON = 'Why; kept with the revision, 3 to 500 characters.'
const CONFIRM =
  'Whether draw figures may differ from what your callers see now by more than a factor of three, or go; false by default.'
const BASED_ON =
  '`changedInRevision` of your own category as it was read; left out where there is none of your own yet.'
const SCOPE = 'Needs a key with the scope catalogue:edit.'

const LayInput = builder.inputType('LayCategoryInput', {
  description: 'A whole category of your own, and why.',
  fields: (t) => ({
    category: t.field({
      type: CategoryInput,
      required: true,
      description: 'The category, under the code of a shared one or under a code of your own.',
    }),
    basedOn: t.int({ description: BASED_ON }),
    reason: t.string({ required: true, description: REASON }),
    confirm: t.boolean({ description: CONFIRM }),
  }),
})

const ChangeInput = builder.inputType('ChangeOverlayCategoryInput', {
  description: 'What is to be otherwise for your own callers, and why.',
  fields: (t) => ({
    code: t.string({ required: true, description: 'Code of the category; not a name or alias.' }),
    basedOn: t.int({ description: BASED_ON }),
    changes: t.field({ type: CategoryChangesInput, required: true, description: 'What is to change.' }),
    reason: t.string({ required: true, description: REASON }),
    confirm: t.boolean({ description: CONFIRM }),
  }),
})

const RemoveInput = builder.inputType('RemoveOverlayCategoryInput', {
  description: 'Which category of your own is to be taken away, and why.',
  fields: (t) => ({
    code: t.string({ required: true, description: 'Code of the category; not a name or alias.' }),
    basedOn: t.int({
      required: true,
      description:
        '`changedInRevision` of your own category as it was read; stale where it was edited since.',
    }),
    reason: t.string({ required: true, description: REASON }),
  }),
})

const named = (name: string) =>
  mutationResult(name, 'Your own figures as they are now, or why they were not edited.', EditedOverlayType, [
    LargeChangeErrorType,
  ])
const [LayResult, ChangeResult, RemoveResult] = [
  named('LayCategoryResult'),
  named('ChangeOverlayCategoryResult'),
  named('RemoveOverlayCategoryResult'),
]
const shown = async ({ catalogueMemory }: Deps, edit: Promise<EditedOverlay>) => ({
  ...(await edit),
  catalogueRevision: catalogueMemory.current().revision,
})

builder.mutationFields((t) => ({
  layCategory: t.field({
    type: LayResult,
    nullable: true,
    description: `Lays a category of your own over the shared catalogue, for the callers of your organisation alone, or replaces it; as one new revision of your own figures. ${SCOPE}`,
    args: { input: t.arg({ type: LayInput, required: true, description: 'The category.' }) },
    resolve: (_root, { input: { category, ...said } }, { deps, sender }) =>
      orUserError(async () => {
        const options = overlayOptions(sender, said)
        const { keepPowered = null, modes, ...rest } = category
        const content = readShape(categoryContentSchema, { ...rest, keepPowered, modes: modesOfInput(modes) })
        return faultsUnder('/category', () =>
          shown(deps, layCategory(deps, sender, category.code, content, options)),
        )
      }),
  }),
  changeOverlayCategory: t.field({
    type: ChangeResult,
    nullable: true,
    description: `Changes fields of a category of your own, or, where there is none yet, makes the shared one with these changes your own. ${SCOPE}`,
    args: { input: t.arg({ type: ChangeInput, required: true, description: 'The change.' }) },
    resolve: (_root, { input: { code, changes, ...said } }, { deps, sender }) =>
      orUserError(async () => {
        const options = overlayOptions(sender, said)
        const { modes, ...rest } = changes
        const patch = { ...rest, ...(modes !== undefined && { modes: modes && modesOfInput(modes) }) }
        const readContent = (merged: unknown) => readShape(patchedCategorySchema, merged)
        return faultsUnder('/changes', () =>
          shown(deps, patchOverlay(deps, sender, code, patch, readContent, options)),
        )
      }),
  }),
  removeOverlayCategory: t.field({
    type: RemoveResult,
    nullable: true,
    description: `Takes a category of your own away, as one new revision of your own figures: the shared figure is back. ${SCOPE}`,
    args: { input: t.arg({ type: RemoveInput, required: true, description: 'The category.' }) },
    resolve: (_root, { input: { code, ...said } }, { deps, sender }) =>
      orUserError(async () => {
        const { reason, known } = overlayOptions(sender, said)
        return shown(deps, removeFromOverlay(deps, sender, code, { reason, basedOn: known }))
      }),
  }),
}))

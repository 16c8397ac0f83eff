import { tariffContentSchema } from '../../../schemas/referenceEdit.ts'
import { changeReference } from '../../../useCases/changeReference.ts'
import { createReference } from '../../../useCases/createReference.ts'
import { builder } from '../builder.ts'
import { editOptions } from '../editOptions.ts'
import { knownField, NamedTariffInput, reasonField, TariffChangesInput } from '../inputs/reference.ts'
import { faultsInDraft, referenceDraft } from '../referenceDraft.ts'
import { EditedTariffType } from '../types/editedReference.ts'
import { StaleTariffErrorType } from '../types/staleReference.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'

const CreateTariffInput = builder.inputType('CreateTariffInput', {
  description: 'A new tariff, and why.',
  fields: (t) => ({
    tariff: t.field({ type: NamedTariffInput, required: true, description: 'The tariff.' }),
    ...reasonField(t),
  }),
})
const ChangeTariffInput = builder.inputType('ChangeTariffInput', {
  description: 'What is to change of a tariff, on which of its states, and why.',
  fields: (t) => ({
    changes: t.field({ type: TariffChangesInput, required: true, description: 'What is to change.' }),
    ...knownField(t),
  }),
})

const CreateResult = mutationResult(
  'CreateTariffResult',
  'The new tariff, or why there is none. A code that is taken is a ConflictError.',
  EditedTariffType,
)
const ChangeResult = mutationResult(
  'ChangeTariffResult',
  'The tariff as it is now, or why it was not changed.',
  EditedTariffType,
  [StaleTariffErrorType],
)

builder.mutationField('createTariff', (t) =>
  t.field({
    type: CreateResult,
    nullable: true,
    description: 'Adds a tariff, as one new revision. Needs a key with the scope catalogue:edit.',
    args: { input: t.arg({ type: CreateTariffInput, required: true, description: 'The tariff.' }) },
    resolve: (_root, { input: { tariff, reason } }, { deps, sender }) =>
      orUserError(async () => {
        const options = editOptions(sender, { reason })
        const draft = referenceDraft(tariffContentSchema, tariff)
        return faultsInDraft('/tariff', tariff, () => createReference(deps, sender, 'tariff', draft, options))
      }),
  }),
)

builder.mutationField('changeTariff', (t) =>
  t.field({
    type: ChangeResult,
    nullable: true,
    description:
      'Changes fields of a tariff, as one new revision. Needs a key with the scope catalogue:edit.',
    args: { input: t.arg({ type: ChangeTariffInput, required: true, description: 'The change.' }) },
    resolve: (_root, { input: { code, changes, ...said } }, { deps, sender }) =>
      orUserError(async () => {
        const options = editOptions(sender, said)
        return faultsInDraft('/changes', changes, () =>
          changeReference(
            deps,
            sender,
            'tariff',
            code,
            (before) => referenceDraft(tariffContentSchema, changes, before),
            options,
          ),
        )
      }),
  }),
)

import { emissionFactorContentSchema } from '../../../schemas/referenceEdit.ts'
import { changeReference } from '../../../useCases/changeReference.ts'
import { createReference } from '../../../useCases/createReference.ts'
import { builder } from '../builder.ts'
import { editOptions } from '../editOptions.ts'
import {
  EmissionFactorChangesInput,
  knownField,
  NamedEmissionFactorInput,
  reasonField,
} from '../inputs/reference.ts'
import { faultsInDraft, referenceDraft } from '../referenceDraft.ts'
import { EditedEmissionFactorType } from '../types/editedReference.ts'
import { StaleEmissionFactorErrorType } from '../types/staleReference.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'

const CreateEmissionFactorInput = builder.inputType('CreateEmissionFactorInput', {
  description: 'A new emission factor, and why.',
  fields: (t) => ({
    emissionFactor: t.field({
      type: NamedEmissionFactorInput,
      required: true,
      description: 'The emission factor.',
    }),
    ...reasonField(t),
  }),
})
const ChangeEmissionFactorInput = builder.inputType('ChangeEmissionFactorInput', {
  description: 'What is to change of an emission factor, on which of its states, and why.',
  fields: (t) => ({
    changes: t.field({ type: EmissionFactorChangesInput, required: true, description: 'What is to change.' }),
    ...knownField(t),
  }),
})

const CreateResult = mutationResult(
  'CreateEmissionFactorResult',
  'The new emission factor, or why there is none. A code that is taken is a ConflictError.',
  EditedEmissionFactorType,
)
const ChangeResult = mutationResult(
  'ChangeEmissionFactorResult',
  'The emission factor as it is now, or why it was not changed.',
  EditedEmissionFactorType,
  [StaleEmissionFactorErrorType],
)

builder.mutationField('createEmissionFactor', (t) =>
  t.field({
    type: CreateResult,
    nullable: true,
    description:
      'Adds a published emission factor, as one new revision. Needs a key with the scope catalogue:edit.',
    args: {
      input: t.arg({ type: CreateEmissionFactorInput, required: true, description: 'The emission factor.' }),
    },
    resolve: (_root, { input: { emissionFactor, reason } }, { deps, sender }) =>
      orUserError(async () => {
        const options = editOptions(sender, { reason })
        const draft = referenceDraft(emissionFactorContentSchema, emissionFactor)
        return faultsInDraft('/emissionFactor', emissionFactor, () =>
          createReference(deps, sender, 'emission-factor', draft, options),
        )
      }),
  }),
)

builder.mutationField('changeEmissionFactor', (t) =>
  t.field({
    type: ChangeResult,
    nullable: true,
    description:
      'Changes fields of an emission factor, as one new revision. Needs a key with the scope catalogue:edit.',
    args: { input: t.arg({ type: ChangeEmissionFactorInput, required: true, description: 'The change.' }) },
    resolve: (_root, { input: { code, changes, ...said } }, { deps, sender }) =>
      orUserError(async () => {
        const options = editOptions(sender, said)
        return faultsInDraft('/changes', changes, () =>
          changeReference(
            deps,
            sender,
            'emission-factor',
            code,
            (before) => referenceDraft(emissionFactorContentSchema, changes, before),
            options,
          ),
        )
      }),
  }),
)

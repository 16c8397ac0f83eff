import type { ReferenceKind } from '../../../core/reference/referenceEntry.ts'
import type { EditedReference } from '../../../useCases/editReference.ts'
import { retireReference } from '../../../useCases/retireReference.ts'
import { builder } from '../builder.ts'
import { editOptions } from '../editOptions.ts'
import { knownField } from '../inputs/reference.ts'
import { EditedEmissionFactorType, EditedTariffType } from '../types/editedReference.ts'
import { StaleEmissionFactorErrorType, StaleTariffErrorType } from '../types/staleReference.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'

const WAYS = {
  retire: {
    retired: true,
    verb: 'Retire',
    description:
      'out of lists and of what is suggested, as one new revision; estimates that name it still get it, with a warning.',
  },
  restore: { retired: false, verb: 'Restore', description: 'back as it is, as one new revision.' },
} as const

/** Adds retireTariff, restoreTariff and the like. */
function addMutations<K extends ReferenceKind>(
  kind: K,
  name: string,
  one: string,
  edited: Parameters<typeof mutationResult<EditedReference<K>>>[2],
  stale: typeof StaleTariffErrorType,
): void {
  for (const way of ['retire', 'restore'] as const) {
    const { retired, verb, description } = WAYS[way]
    const Input = builder.inputType(`${verb}${name}Input`, {
      description: `Which of them, on which of its states, and why.`,
      fields: (t) => knownField(t),
    })
    const Result = mutationResult(
      `${verb}${name}Result`,
      'As it is now, or why it is not as it was wanted.',
      edited,
      [stale],
    )
    builder.mutationField(`${way}${name}`, (t) =>
      t.field({
        type: Result,
        nullable: true,
        description: `${retired ? 'Takes' : 'Brings'} ${one} ${description} Needs a key with the scope catalogue:edit.`,
        args: { input: t.arg({ type: Input, required: true, description: 'Which one.' }) },
        resolve: (_root, { input: { code, ...said } }, { deps, sender }) =>
          orUserError(async () =>
            retireReference(deps, sender, kind, code, { ...editOptions(sender, said), retired }),
          ),
      }),
    )
  }
}

addMutations('tariff', 'Tariff', 'a tariff', EditedTariffType, StaleTariffErrorType)
addMutations(
  'emission-factor',
  'EmissionFactor',
  'an emission factor',
  EditedEmissionFactorType,
  StaleEmissionFactorErrorType,
)

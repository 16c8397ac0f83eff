import type { FieldChange } from '../../../core/catalogue/fieldChanges.ts'
import type { Revision } from '../../../core/catalogue/revision.ts'
import type { ReferenceContents, ReferenceKind } from '../../../core/reference/referenceEntry.ts'
import { builder } from '../builder.ts'
import { shownReference } from '../shownReference.ts'
import { NamedEmissionFactorType } from './emissionFactor.ts'
import { FieldChangeType } from './fieldChange.ts'
import { ReferenceRevisionType } from './referenceRevision.ts'
import { NamedTariffType } from './tariff.ts'
import { type UserError, UserErrorInterface } from './userErrors.ts'

/** What useCases/requireKnownState.ts puts into a refusal. */
interface Stale {
  readonly changedIn: number
  readonly lastEdit: Revision
  readonly changes: readonly FieldChange[] | null
}
const stale = ({ details }: UserError) => details as unknown as Stale

const currentOf = <K extends ReferenceKind>({ details }: UserError) => {
  const { current, changedIn } = details as unknown as Stale & { readonly current: ReferenceContents[K] }
  return shownReference<K>({ content: current, changedIn })
}

const Common = builder.interfaceRef<UserError>('StaleReferenceError').implement({
  description: 'Somebody edited it meanwhile. Look at what changed, and base the edit on the present state.',
  interfaces: [UserErrorInterface],
  fields: (t) => ({
    lastEdit: t.field({
      type: ReferenceRevisionType,
      description: 'The revision that gave it its present state: who, when and why.',
      resolve: (error) => stale(error).lastEdit,
    }),
    changedFields: t.field({
      type: [FieldChangeType],
      nullable: true,
      description: 'What changed since the state that the edit was based on; null where that is not known.',
      resolve: (error) => stale(error).changes,
    }),
  }),
})

export const StaleTariffErrorType = builder.objectRef<UserError>('StaleTariffError').implement({
  description: 'The tariff was edited meanwhile.',
  interfaces: [UserErrorInterface, Common],
  fields: (t) => ({
    current: t.field({
      type: NamedTariffType,
      description: 'The tariff as it is now; its `changedInRevision` is what to base the next attempt on.',
      resolve: (error) => currentOf<'tariff'>(error),
    }),
  }),
})

export const StaleEmissionFactorErrorType = builder
  .objectRef<UserError>('StaleEmissionFactorError')
  .implement({
    description: 'The emission factor was edited meanwhile.',
    interfaces: [UserErrorInterface, Common],
    fields: (t) => ({
      current: t.field({
        type: NamedEmissionFactorType,
        description: 'The factor as it is now; its `changedInRevision` is what to base the next attempt on.',
        resolve: (error) => currentOf<'emission-factor'>(error),
      }),
    }),
  })

import type { EditedReference } from '../../../useCases/editReference.ts'
import { builder } from '../builder.ts'
import { shownReference } from '../shownReference.ts'
import { NamedEmissionFactorType } from './emissionFactor.ts'
import { ReferenceRevisionType } from './referenceRevision.ts'
import { NamedTariffType } from './tariff.ts'

const revisionText = 'The revision that the edit made; null where nothing had to change.'

export const EditedTariffType = builder.objectRef<EditedReference<'tariff'>>('EditedTariff').implement({
  description: 'A tariff after an edit.',
  fields: (t) => ({
    tariff: t.field({
      type: NamedTariffType,
      description: 'The tariff as it is now.',
      resolve: (edited) => shownReference<'tariff'>(edited),
    }),
    revision: t.expose('revision', {
      type: ReferenceRevisionType,
      nullable: true,
      description: revisionText,
    }),
  }),
})

export const EditedEmissionFactorType = builder
  .objectRef<EditedReference<'emission-factor'>>('EditedEmissionFactor')
  .implement({
    description: 'An emission factor after an edit.',
    fields: (t) => ({
      emissionFactor: t.field({
        type: NamedEmissionFactorType,
        description: 'The emission factor as it is now.',
        resolve: (edited) => shownReference<'emission-factor'>(edited),
      }),
      revision: t.expose('revision', {
        type: ReferenceRevisionType,
        nullable: true,
        description: revisionText,
      }),
    }),
  })

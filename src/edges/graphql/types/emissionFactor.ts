import type { EmissionFactorPage } from '../../../useCases/listEmissionFactors.ts'
import { builder } from '../builder.ts'
import { EXPECTED_LENGTH } from '../limits.ts'
import { shownReference, type ShownReference } from '../shownReference.ts'
import { EmissionFactorType } from './settings.ts'
import { FactorKindEnum, GASES_IN_WORDS, SourceMarkEnum } from './tariffEnums.ts'
import { WarningType } from './warning.ts'

export const NamedEmissionFactorType = builder
  .objectRef<ShownReference<'emission-factor'>>('NamedEmissionFactor')
  .implement({
    description: 'A published emission factor.',
    fields: (t) => ({
      code: t.exposeString('code', { description: 'For `emissionFactorCode`.' }),
      regionCode: t.exposeString('regionCode', {
        description: 'The grid; the same in all years and for both kinds.',
      }),
      region: t.exposeString('region', { description: 'The grid in words.' }),
      kind: t.expose('kind', { type: FactorKindEnum, description: 'What the factor is for.' }),
      year: t.exposeInt('year', { description: 'Year that it is of.' }),
      factor: t.expose('factor', { type: EmissionFactorType, description: 'The factor.' }),
      gases: t.exposeString('gases', { description: `What it counts. ${GASES_IN_WORDS}` }),
      source: t.exposeString('source', { description: 'Where it was published.' }),
      mark: t.expose('mark', { type: SourceMarkEnum, description: 'How well it is confirmed.' }),
      retired: t.exposeBoolean('retired', {
        description: 'True where it is out of lists, kept for old estimates.',
      }),
      changedInRevision: t.exposeInt('changedInRevision', {
        description:
          'Revision that gave it this state, whatever was edited elsewhere since; `basedOn` of an edit.',
      }),
    }),
  })

export const EmissionFactorListType = builder
  .objectRef<Omit<EmissionFactorPage, 'next'>>('EmissionFactorList')
  .implement({
    description: 'Published emission factors.',
    fields: (t) => ({
      items: t.field({
        type: [NamedEmissionFactorType],
        description: 'In the order of their codes.',
        resolve: ({ items, changedIn }) =>
          items.map((content) =>
            shownReference<'emission-factor'>({ content, changedIn: changedIn.get(content.code)! }),
          ),
      }),
      referenceRevision: t.exposeInt('referenceRevision', {
        description: 'Revision of tariffs and emission factors that was read.',
      }),
      warnings: t.field({
        type: [WarningType],
        description: 'What was answered in place of what was asked for.',
        complexity: { field: 1, multiplier: EXPECTED_LENGTH.warnings },
        resolve: ({ warnings }) => warnings,
      }),
    }),
  })

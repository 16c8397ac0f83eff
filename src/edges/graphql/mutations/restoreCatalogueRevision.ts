import type { ChangeCounts } from '../../../core/catalogue/categoryChange.ts'
import { type RestoredRevision, restoreRevision } from '../../../useCases/restoreRevision.ts'
import { builder } from '../builder.ts'
import { editOptions } from '../editOptions.ts'
import { CatalogueRevisionType } from '../types/catalogueRevision.ts'
import { LargeChangeErrorType, StaleCatalogueErrorType } from '../types/editErrors.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'

const RestoreCatalogueRevisionInput = builder.inputType('RestoreCatalogueRevisionInput', {
  description: 'Which revision the catalogue is to go back to, from which, and why.',
  fields: (t) => ({
    number: t.int({ required: true, description: 'Number of the revision to go back to.' }),
    basedOn: t.int({
      required: true,
      description:
        'Number of the newest revision, as it was read; stale where the catalogue was edited since.',
    }),
    reason: t.string({
      required: true,
      description: 'Why; kept with the revision, 3 to 500 characters.',
    }),
    confirm: t.boolean({
      description: 'Whether draw figures may change by more than a factor of three, or go; false by default.',
    }),
  }),
})

const CountsType = builder.objectRef<ChangeCounts>('ChangeCounts').implement({
  description: 'Numbers of categories by what happened to them.',
  fields: (t) => ({
    added: t.exposeInt('added', { description: 'That are new.' }),
    changed: t.exposeInt('changed', { description: 'That were changed.' }),
    retired: t.exposeInt('retired', { description: 'That were retired.' }),
    restored: t.exposeInt('restored', { description: 'That were brought back.' }),
  }),
})

const RestoredType = builder.objectRef<RestoredRevision>('RestoredCatalogueRevision').implement({
  description: 'The catalogue after it went back to an older revision.',
  fields: (t) => ({
    restored: t.exposeInt('restored', { description: 'Number of the revision that it is as at now.' }),
    counts: t.expose('counts', { type: CountsType, description: 'What had to change for that.' }),
    revision: t.field({
      type: CatalogueRevisionType,
      nullable: true,
      description: 'The revision that this made; null where nothing had to change.',
      resolve: ({ revision }) => revision,
    }),
  }),
})

const Result = mutationResult(
  'RestoreCatalogueRevisionResult',
  'The catalogue as it is now, or why it did not go back.',
  RestoredType,
  [StaleCatalogueErrorType, LargeChangeErrorType],
)

builder.mutationField('restoreCatalogueRevision', (t) =>
  t.field({
    type: Result,
    nullable: true,
    description:
      'Brings the catalogue back to what it was at an older revision, as one new revision; categories that there were none of then are retired. Needs a key with the scope catalogue:edit.',
    args: {
      input: t.arg({ type: RestoreCatalogueRevisionInput, required: true, description: 'The revision.' }),
    },
    resolve: (_root, { input: { number, ...said } }, { deps, sender }) =>
      orUserError(async () => restoreRevision(deps, sender, number, editOptions(sender, said))),
  }),
)

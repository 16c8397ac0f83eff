import type { Revision } from '../../../core/catalogue/revision.ts'
import type { ReferenceChange } from '../../../core/reference/referenceChange.ts'
import type { ReferenceKind } from '../../../core/reference/referenceEntry.ts'
import { readReferenceChanges, readReferenceRevision } from '../../../useCases/readReferenceRevision.ts'
import { builder } from '../builder.ts'
import { enumOf } from '../enumOf.ts'
import { nodeOrNull } from '../nodeOrNull.ts'
import { AuthorType, NUMBER } from './catalogueRevision.ts'
import { FieldChangeType } from './fieldChange.ts'
import { ChangeKindEnum, RevisionActionEnum } from './revisionEnums.ts'

const ReferenceKindEnum = enumOf<ReferenceKind>(
  'ReferenceKind',
  'What is kept for estimates besides the catalogue.',
  {
    tariff: 'A tariff.',
    'emission-factor': 'An emission factor.',
  },
)

const ReferenceChangeType = builder.objectRef<ReferenceChange>('ReferenceChange').implement({
  description:
    'What a revision changed of one tariff or emission factor. The whole of it, before or after, is `tariff` or `emissionFactor` at the revision before or at this one.',
  fields: (t) => ({
    of: t.field({ type: ReferenceKindEnum, description: 'What it is.', resolve: ({ after }) => after.kind }),
    code: t.exposeString('code', { description: 'Its code.' }),
    kind: t.expose('kind', { type: ChangeKindEnum, description: 'What happened.' }),
    fields: t.field({
      type: [FieldChangeType],
      description: 'Every field that differs; none of what is new.',
      resolve: ({ fields }) => fields,
    }),
  }),
})

export const ReferenceRevisionType = builder.node(builder.objectRef<Revision>('ReferenceRevision'), {
  description:
    'One numbered state of all tariffs and emission factors, and what its author said of it. Nothing can change or remove it.',
  id: {
    description: 'Opaque name of the revision, unique in the whole service.',
    resolve: ({ number }) => String(number),
  },
  loadOne: async (id, { deps }) =>
    NUMBER.test(id) ? nodeOrNull(() => readReferenceRevision(deps, Number(id))) : null,
  fields: (t) => ({
    number: t.exposeInt('number', { description: 'Its number; the one after it has the next.' }),
    action: t.expose('action', { type: RevisionActionEnum, description: 'What kind of act made it.' }),
    author: t.expose('author', { type: AuthorType, description: 'Who made it.' }),
    reason: t.exposeString('reason', { description: 'Why, in the words of its author.' }),
    at: t.string({ description: 'When (RFC 3339).', resolve: ({ at }) => at.toISOString() }),
    changes: t.field({
      type: [ReferenceChangeType],
      description: 'What it changed, tariffs first, each in the order of the codes.',
      resolve: ({ number }, _args, { deps }) => readReferenceChanges(deps, number),
    }),
  }),
})

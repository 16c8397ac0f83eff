import type { Author, Revision } from '../../../core/catalogue/revision.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { countRevisionChanges, readRevision, readRevisionChanges } from '../../../useCases/readRevision.ts'
import { CHANGE_LIST } from '../../catalogueLists.ts'
import { builder } from '../builder.ts'
import { connectionOf, listWindow } from '../listWindow.ts'
import { nodeOrNull } from '../nodeOrNull.ts'
import { pageArgumentsSchema, pageCost } from '../pageArguments.ts'
import { withoutNulls } from '../withoutNulls.ts'
import { CategoryChangeType } from './categoryChange.ts'
import { RevisionActionEnum } from './revisionEnums.ts'

export const AuthorType = builder.objectRef<Author>('RevisionAuthor').implement({
  description: 'Who made a revision.',
  fields: (t) => ({
    organisation: t.exposeString('organisation', {
      description: 'Code of the organisation; "system" is the service itself.',
    }),
    keyId: t.exposeString('keyId', { nullable: true, description: "Which of the organisation's keys." }),
  }),
})

/** A revision that an id may name; numbers beyond are none. */
export const NUMBER = /^[1-9][0-9]{0,8}$/

export const CatalogueRevisionType = builder.node(builder.objectRef<Revision>('CatalogueRevision'), {
  description:
    'One numbered state of the catalogue, and what its author said of it. Nothing can change or remove it.',
  id: {
    description: 'Opaque name of the revision, unique in the whole service.',
    resolve: ({ number }) => String(number),
  },
  loadOne: async (id, { deps }) =>
    NUMBER.test(id) ? nodeOrNull(() => readRevision(deps, Number(id))) : null,
  fields: (t) => ({
    number: t.exposeInt('number', { description: 'Its number; the one after it has the next.' }),
    action: t.expose('action', { type: RevisionActionEnum, description: 'What kind of act made it.' }),
    author: t.expose('author', { type: AuthorType, description: 'Who made it.' }),
    reason: t.exposeString('reason', { description: 'Why, in the words of its author.' }),
    at: t.string({ description: 'When (RFC 3339).', resolve: ({ at }) => at.toISOString() }),
    changes: t.connection(
      {
        type: CategoryChangeType,
        description: 'What it changed, in the order of the codes.',
        complexity: pageCost,
        resolve: async ({ number }, pageArguments, { deps }) => {
          const page = readShape(pageArgumentsSchema, withoutNulls(pageArguments))
          const of = { value: { number }, faults: [], raw: null }
          const { window, filter } = listWindow(CHANGE_LIST, page, of)
          const { items, ...rest } = await readRevisionChanges(deps, number, window)
          const part = { ...rest, items: items.map((change) => ({ ...change, revision: number })) }
          return {
            ...connectionOf(CHANGE_LIST, part, filter),
            count: () => countRevisionChanges(deps, number),
          }
        },
      },
      {
        name: 'CategoryChangeConnection',
        description: 'A page of changes.',
        fields: (connection) => ({
          totalCount: connection.int({
            description: 'Number of categories that it changed, on all pages.',
            resolve: ({ count }) => count(),
          }),
        }),
      },
      { name: 'CategoryChangeEdge', description: 'A change and its place in the list.' },
    ),
  }),
})

import { readShape } from '../../../schemas/readShape.ts'
import { listRevisions } from '../../../useCases/listRevisions.ts'
import { REVISION_LIST } from '../../catalogueLists.ts'
import { builder } from '../builder.ts'
import { connectionOf, listWindow } from '../listWindow.ts'
import { pageArgumentsSchema, pageCost } from '../pageArguments.ts'
import { CatalogueRevisionType } from '../types/catalogueRevision.ts'
import { withoutNulls } from '../withoutNulls.ts'

const NO_FILTER = { value: {}, faults: [], raw: null }

builder.queryField('catalogueRevisions', (t) =>
  t.connection(
    {
      type: CatalogueRevisionType,
      nullable: true,
      description: 'The revisions of the catalogue, newest first: who edited it, when and why.',
      complexity: pageCost,
      resolve: async (_root, pageArguments, { deps }) => {
        const page = readShape(pageArgumentsSchema, withoutNulls(pageArguments))
        const { window, filter } = listWindow(REVISION_LIST, page, NO_FILTER)
        const { total, ...part } = await listRevisions(deps, window)
        return { ...connectionOf(REVISION_LIST, part, filter), totalCount: total }
      },
    },
    {
      name: 'CatalogueRevisionConnection',
      description: 'A page of revisions.',
      fields: (connection) => ({
        totalCount: connection.exposeInt('totalCount', { description: 'Number of revisions, on all pages.' }),
      }),
    },
    { name: 'CatalogueRevisionEdge', description: 'A revision and its place in the list.' },
  ),
)

import { z } from 'zod'
import type { LabelledCategory } from '../../../core/catalogue/labelledCategory.ts'
import { FaultyInput } from '../../../core/fault.ts'
import { categoryQuerySchema } from '../../../schemas/category.ts'
import { readShape } from '../../../schemas/readShape.ts'
import type { Deps } from '../../../useCases/deps.ts'
import { listCategoryPage } from '../../../useCases/listCategoryPage.ts'
import { writeCursor } from '../../categoryCursor.ts'
import { builder } from '../builder.ts'
import { cutConnection, type Window } from '../cutConnection.ts'
import { pageArgumentsSchema, pageCost, pageLength } from '../pageArguments.ts'
import { readCategoryCursors } from '../readCategoryCursors.ts'
import { CategoryType } from '../types/category.ts'
import { GroupEnum } from '../types/enums.ts'
import { withoutNulls } from '../withoutNulls.ts'

/** The same rules as REST's query; only that a flag is a flag here, and no text. */
const filterSchema = categoryQuerySchema
  .pick({ group: true, search: true, catalogueRevision: true })
  .extend({ includeRetired: z.boolean().default(false) })
type Filter = z.output<typeof filterSchema>

builder.queryField('categories', (t) =>
  t.connection(
    {
      type: CategoryType,
      nullable: true,
      description:
        'The categories of the catalogue, in the order of their codes. Pages of one walk all read the catalogue revision of the first, whatever is edited meanwhile.',
      args: {
        group: t.arg({ type: GroupEnum, description: 'Only categories of this part of the household.' }),
        search: t.arg.string({
          description: 'Words, all of which occur in the code, the name or one alias.',
        }),
        includeRetired: t.arg.boolean({
          description: 'Whether to show retired categories too; false by default.',
        }),
        catalogueRevision: t.arg.int({ description: 'Catalogue revision to read; the newest by default.' }),
      },
      complexity: pageCost,
      resolve: async (_root, { first, last, after, before, ...rest }, { deps }) => {
        const page = readShape(pageArgumentsSchema, withoutNulls({ first, last, after, before }))
        const filter = readShape(filterSchema, withoutNulls(rest))
        const places = filter.value && readCategoryCursors(withoutNulls({ after, before }), filter.value)
        const faults = [...page.faults, ...filter.faults, ...(places?.faults ?? [])]
        if (!page.value || !filter.value || !places || faults.length > 0) throw new FaultyInput(faults)
        return cut(deps, filter.value, places.revision, { ...pageLength(page.value), ...places.keys })
      },
    },
    {
      name: 'CategoryConnection',
      description: 'A page of categories.',
      fields: (connection) => ({
        totalCount: connection.exposeInt('totalCount', {
          description: 'Number of categories that the filter lets through, on all pages.',
        }),
        catalogueRevision: connection.exposeInt('catalogueRevision', {
          description: 'Catalogue revision that was read.',
        }),
      }),
    },
    { name: 'CategoryEdge', description: 'A category and its place in the list.' },
  ),
)

/** The catalogue is in memory, so the whole list costs nothing to get, and both directions are cut from it. */
async function cut(deps: Deps, filter: Filter, cursorRevision: number | undefined, window: Window) {
  const asked = filter.catalogueRevision ?? cursorRevision
  const all = await listCategoryPage(deps, { ...filter, catalogueRevision: asked }, { limit: Infinity })
  const { catalogueRevision, changedIn } = all
  const connection = cutConnection<LabelledCategory>(all.items, window, {
    keyOf: ({ code }) => code,
    cursorOf: ({ code }) => writeCursor(code, catalogueRevision, filter),
  })
  const pinned = filter.catalogueRevision !== undefined
  const edges = connection.edges.map(({ node, cursor }) => ({
    cursor,
    node: { category: node, catalogueRevision, changedIn: changedIn.get(node.code)!, pinned },
  }))
  return { pageInfo: connection.pageInfo, edges, totalCount: all.total, catalogueRevision }
}

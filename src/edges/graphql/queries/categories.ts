import { z } from 'zod'
import type { LabelledCategory } from '../../../core/catalogue/labelledCategory.ts'
import { FaultyInput } from '../../../core/fault.ts'
import { categoryQuerySchema } from '../../../schemas/category.ts'
import { askedOverlayRevision } from '../../../schemas/layer.ts'
import { readShape } from '../../../schemas/readShape.ts'
import type { Sender } from '../../../useCases/authorize.ts'
import type { AskedRevisions } from '../../../useCases/callersCatalogue.ts'
import type { Deps } from '../../../useCases/deps.ts'
import { listCategoryPage } from '../../../useCases/listCategoryPage.ts'
import { writeCursor } from '../../categoryCursor.ts'
import { builder } from '../builder.ts'
import { cutConnection, type Window } from '../cutConnection.ts'
import { OVERLAY_ARGUMENT } from '../overlayArgument.ts'
import { pageArgumentsSchema, pageCost, pageLength } from '../pageArguments.ts'
import { readCategoryCursors } from '../readCategoryCursors.ts'
import { CategoryType } from '../types/category.ts'
import { GroupEnum } from '../types/enums.ts'
import { withoutNulls } from '../withoutNulls.ts'

/** The same rules as REST's query; only that a flag is a flag here, and no text. */
const filterSchema = categoryQuerySchema.pick({ group: true, search: true, catalogueRevision: true }).extend({
  includeRetired: z.boolean().default(false),
  overlayRevision: askedOverlayRevision.optional(),
})
type Filter = z.output<typeof filterSchema>

builder.queryField('categories', (t) =>
  t.connection(
    {
      type: CategoryType,
      nullable: true,
      description:
        'The categories of the catalogue, in the order of their codes. Pages of one walk all read the revisions of the first, whatever is edited meanwhile. With a key, the own figures of its organisation stand in place of the shared ones.',
      args: {
        group: t.arg({ type: GroupEnum, description: 'Only categories of this part of the household.' }),
        search: t.arg.string({
          description: 'Words, all of which occur in the code, the name or one alias.',
        }),
        includeRetired: t.arg.boolean({
          description: 'Whether to show retired categories too; false by default.',
        }),
        catalogueRevision: t.arg.int({ description: 'Catalogue revision to read; the newest by default.' }),
        overlayRevision: t.arg.int({ description: OVERLAY_ARGUMENT }),
      },
      complexity: pageCost,
      resolve: async (_root, { first, last, after, before, ...rest }, { deps, sender }) => {
        const page = readShape(pageArgumentsSchema, withoutNulls({ first, last, after, before }))
        const filter = readShape(filterSchema, withoutNulls(rest))
        const organisation = sender.caller?.organisation ?? null
        const asked = filter.value && { ...filter.value, organisation }
        const places = asked && readCategoryCursors(withoutNulls({ after, before }), asked)
        const faults = [...page.faults, ...filter.faults, ...(places?.faults ?? [])]
        if (!page.value || !filter.value || !places || faults.length > 0) throw new FaultyInput(faults)
        const window = { ...pageLength(page.value), ...places.keys }
        return cut(deps, sender, filter.value, places.revisions, window)
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
        overlayRevision: connection.exposeInt('overlayRevision', {
          description: "Revision of your organisation's own figures that was read; 0 where there was none.",
        }),
      }),
    },
    { name: 'CategoryEdge', description: 'A category and its place in the list.' },
  ),
)

/** The catalogue is in memory, so the whole list costs nothing to get, and both directions are cut from it. */
async function cut(deps: Deps, sender: Sender, filter: Filter, ofCursors: AskedRevisions, window: Window) {
  const pinned = { catalogueRevision: filter.catalogueRevision, overlayRevision: filter.overlayRevision }
  const asked = {
    catalogueRevision: pinned.catalogueRevision ?? ofCursors.catalogueRevision,
    overlayRevision: pinned.overlayRevision ?? ofCursors.overlayRevision,
  }
  const all = await listCategoryPage(deps, sender, { ...filter, ...asked }, { limit: Infinity })
  const { catalogueRevision, overlayRevision, changedIn } = all
  const read = { catalogueRevision, overlayRevision }
  const organisation = sender.caller?.organisation ?? null
  const connection = cutConnection<LabelledCategory>(all.items, window, {
    keyOf: ({ code }) => code,
    cursorOf: ({ code }) => writeCursor(code, { ...read, organisation }, filter),
  })
  const edges = connection.edges.map(({ node, cursor }) => ({
    cursor,
    node: { category: node, ...read, changedIn: changedIn.get(node.code)!, pinned },
  }))
  return { pageInfo: connection.pageInfo, edges, totalCount: all.total, ...read }
}

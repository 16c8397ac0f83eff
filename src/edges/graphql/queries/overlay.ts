import { z } from 'zod'
import { askedOverlayRevision } from '../../../schemas/layer.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { catalogueOf } from '../../../useCases/catalogueOf.ts'
import { listOverlay, listOverlayRevisions } from '../../../useCases/readOverlay.ts'
import { OVERLAY_LIST, OVERLAY_REVISION_LIST } from '../../overlayLists.ts'
import { writeListCursor } from '../../listCursor.ts'
import { builder } from '../builder.ts'
import { cutConnection } from '../cutConnection.ts'
import { connectionOf, listWindow } from '../listWindow.ts'
import { pageArgumentsSchema, pageCost, pageLength } from '../pageArguments.ts'
import { CategoryType } from '../types/category.ts'
import { OverlayRevisionType } from '../types/overlayRevision.ts'
import { withoutNulls } from '../withoutNulls.ts'

const filterSchema = z.strictObject({
  organisation: z.string().optional(),
  asked: askedOverlayRevision.optional(),
})

builder.queryField('overlayCategories', (t) =>
  t.connection(
    {
      type: CategoryType,
      nullable: true,
      description:
        'The categories that your organisation has laid over the shared catalogue for its own callers, in the order of their codes. Needs a key with the scope catalogue:edit.',
      args: {
        overlayRevision: t.arg.int({
          description: 'Revision of your own figures to read; the newest by default.',
        }),
      },
      complexity: pageCost,
      resolve: async (_root, { first, last, after, before, overlayRevision }, { deps, sender }) => {
        const page = readShape(pageArgumentsSchema, withoutNulls({ first, last, after, before }))
        const of = { organisation: sender.caller?.organisation, asked: overlayRevision }
        const given = readShape(filterSchema, withoutNulls(of))
        const { filter, window } = listWindow(OVERLAY_LIST, page, given)
        const all = await listOverlay(deps, sender, filter.asked, { limit: Infinity })
        const places = { ...pageLength(page.value!), after: window.after, before: window.before }
        const connection = cutConnection(all.items, places, {
          keyOf: ({ code }) => code,
          cursorOf: (item) => writeListCursor(item, OVERLAY_LIST, filter),
        })
        const pinned = { overlayRevision: filter.asked }
        const { revision: catalogueRevision } = await catalogueOf(deps, undefined)
        const edges = connection.edges.map(({ node, cursor }) => ({
          cursor,
          node: {
            category: node,
            changedIn: all.changedIn.get(node.code)!,
            catalogueRevision,
            overlayRevision: all.overlayRevision,
            pinned,
          },
        }))
        return { ...connection, edges, totalCount: all.total, overlayRevision: all.overlayRevision }
      },
    },
    {
      name: 'OverlayCategoryConnection',
      description: 'A page of categories of your own.',
      fields: (connection) => ({
        totalCount: connection.exposeInt('totalCount', { description: 'Number of them, on all pages.' }),
        overlayRevision: connection.exposeInt('overlayRevision', {
          description: 'Revision of your own figures that was read; 0 where there is none.',
        }),
      }),
    },
    { name: 'OverlayCategoryEdge', description: 'A category of your own and its place in the list.' },
  ),
)

builder.queryField('overlayRevisions', (t) =>
  t.connection(
    {
      type: OverlayRevisionType,
      nullable: true,
      description:
        "The revisions of your organisation's own figures, newest first: who edited them, when and why. Needs a key with the scope catalogue:edit.",
      complexity: pageCost,
      resolve: async (_root, pageArguments, { deps, sender }) => {
        const page = readShape(pageArgumentsSchema, withoutNulls(pageArguments))
        const of = { value: { organisation: sender.caller?.organisation }, faults: [], raw: null }
        const { window, filter } = listWindow(OVERLAY_REVISION_LIST, page, of)
        const { total, ...part } = await listOverlayRevisions(deps, sender, window)
        return { ...connectionOf(OVERLAY_REVISION_LIST, part, filter), totalCount: total }
      },
    },
    {
      name: 'OverlayRevisionConnection',
      description: 'A page of revisions.',
      fields: (connection) => ({
        totalCount: connection.exposeInt('totalCount', { description: 'Number of revisions, on all pages.' }),
      }),
    },
    { name: 'OverlayRevisionEdge', description: 'A revision and its place in the list.' },
  ),
)

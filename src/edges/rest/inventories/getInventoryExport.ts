import { inventoryExportSchema, showExport } from '../../../schemas/inventoryExport.ts'
import { exportInventory } from '../../../useCases/exportInventory.ts'
import { jsonAnswer } from '../answers.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, type RestApp } from '../submitted.ts'
import { exampleExport } from './examples.ts'
import { inventoryParameters } from './inventoryParameters.ts'

export function getInventoryExport(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/inventories/:id/export',
    config: { scope: 'intake' },
    schema: {
      operationId: 'exportInventory',
      tags: ['inventories'],
      summary: 'Export all that is held about one household',
      description:
        'The inventory with all its visits, every stored estimate with what it was made from, and the audit events that name it.',
      params: inventoryParameters,
      querystring: noQuery,
      response: {
        200: jsonAnswer('All that is held', inventoryExportSchema, exampleExport),
        ...problemAnswers(...NEEDS_KEY, 'unknown-inventory', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      fitting(request.query)
      const { id } = fitting(request.params)
      const all = await exportInventory(deps, senderOf(request), id)
      return reply
        .headers({
          'cache-control': 'no-store',
          'content-disposition': 'attachment; filename="inventory.json"',
        })
        .send(showExport(all))
    },
  })
}

import { inventoryContentSchema, inventoryPatchSchema } from '../../../schemas/inventory.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { changeInventory } from '../../../useCases/changeInventory.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { basisOfInventory } from '../ifMatch.ts'
import { MERGE_PATCH, readingMergePatches } from '../mergePatches.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, type RestApp } from '../submitted.ts'
import { inventoryAnswer, sendInventory } from './answers.ts'
import { inventoryParameters } from './inventoryParameters.ts'

export const patchInventory = readingMergePatches((app: RestApp, { deps }: RestContext): void => {
  app.route({
    method: 'PATCH',
    url: '/v1/inventories/:id',
    config: { scope: 'intake', conditions: ['If-Match'], reads: [MERGE_PATCH] },
    schema: {
      operationId: 'patchInventory',
      tags: ['inventories'],
      summary: 'Change some fields of a household',
      description:
        'By a merge patch (RFC 7396), with If-Match, the ETag of the inventory as it was read. Visits are replaced as a whole; ' +
        'POST /v1/inventories/{id}/visits adds one. Pointers of faults speak of the inventory as it would become.',
      consumes: [MERGE_PATCH],
      params: inventoryParameters,
      querystring: noQuery,
      body: inventoryPatchSchema,
      response: {
        200: inventoryAnswer('The inventory as it is now'),
        ...problemAnswers(
          ...NEEDS_KEY,
          ...NEEDS_BODY,
          'unknown-inventory',
          'inventory-exists',
          'malformed-condition',
          'precondition-required',
          'stale-inventory',
          'address-too-long',
        ),
      },
    },
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      fitting(request.query)
      const { id } = fitting(request.params)
      const basedOn = basisOfInventory(request, id)
      const readContent = (merged: unknown) => readShape(inventoryContentSchema, merged)
      // The patch as it came: a schema's copy of it would lose what null and __proto__ mean here.
      const { raw } = request.body
      return sendInventory(
        reply,
        await changeInventory(deps, senderOf(request), id, raw, readContent, basedOn),
      )
    },
  })
})

import { verificationRequestSchema } from '../../../schemas/verification.ts'
import { verificationSchema } from '../../../schemas/verificationAnswer.ts'
import { verificationWantedSchema } from '../../../schemas/inventoryWants.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { verifyInventory } from '../../../useCases/verifyInventory.ts'
import { jsonAnswer } from '../answers.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { exampleVerification } from '../verification/exampleVerification.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, queryFaults, type RestApp } from '../submitted.ts'
import { inventoryParameters } from './inventoryParameters.ts'

export function postInventoryVerification(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/inventories/:id/verification',
    config: { scope: 'intake' },
    schema: {
      operationId: 'verifyInventory',
      tags: ['inventories'],
      summary: 'Verify what was saved between two visits of a kept household',
      description:
        'As POST /v1/verifications does, between the first visit and the last where none are named. Devices need ids, by which they are ' +
        'the same at both visits. Pointers under /before and /after speak of the visits. Nothing is stored.',
      params: inventoryParameters,
      querystring: noQuery,
      body: verificationWantedSchema,
      response: {
        200: jsonAnswer('The verification', verificationSchema, exampleVerification),
        ...problemAnswers(
          ...NEEDS_KEY,
          ...NEEDS_BODY,
          'unknown-inventory',
          'unknown-revision',
          'unknown-overlay-revision',
          'unknown-reference-revision',
          'address-too-long',
        ),
      },
    },
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const { body, query } = request
      const { id } = fitting(request.params)
      const wanted = { ...body, faults: [...queryFaults(query), ...body.faults] }
      const readRequest = (raw: unknown) => readShape(verificationRequestSchema, raw)
      reply.header('cache-control', 'no-store')
      return verifyInventory(deps, senderOf(request), id, wanted, readRequest)
    },
  })
}
